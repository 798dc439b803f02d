import { describe, expect, test } from "vitest";
import { groundCar } from "../../lib/engine/ground.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";

/*
 * Ways in which cars are built, and parts that a car so built must have. Common practice, no source: any general textbook
 * of vehicle technology names the same.
 */
const knowledge = shippedKnowledge();

type Build = readonly [name: string, car: Record<string, unknown>, has: string, lacks: string];

const BUILDS: readonly Build[] = [
  [
    "rear twist beam",
    { rear: { layout: "twist-beam" } },
    "twist-beam twist-beam-bush rear-coil-spring rear-damper rear-damper-mount rear-bump-stop",
    "rear-toe-link rear-subframe leaf-spring rear-anti-roll-bar rear-eccentric-adjuster",
  ],
  [
    "rear multi-link",
    { rear: { layout: "multi-link" } },
    "rear-toe-link rear-lower-link rear-upper-link rear-trailing-link rear-toe-link-bush rear-lower-link-bush rear-upper-link-bush rear-trailing-link-bush rear-toe-link-ball-joint rear-lower-link-ball-joint rear-upper-link-ball-joint rear-eccentric-adjuster rear-subframe rear-coil-spring rear-damper",
    "twist-beam leaf-spring trailing-arm panhard-rod",
  ],
  [
    "rear trailing or semi-trailing arms",
    { rear: { layout: "trailing-arm" } },
    "trailing-arm trailing-arm-bush trailing-arm-pivot rear-coil-spring rear-damper",
    "twist-beam rear-toe-link leaf-spring",
  ],
  [
    "rear strut",
    { rear: { layout: "strut" } },
    "rear-damper rear-damper-mount rear-lower-link rear-trailing-link rear-coil-spring",
    "twist-beam rear-upper-link leaf-spring",
  ],
  [
    "rear solid axle on leaf springs",
    { rear: { layout: "leaf-axle" } },
    "rear-axle-housing leaf-spring leaf-spring-shackle leaf-spring-eye-bush leaf-spring-hanger leaf-spring-u-bolts leaf-spring-centre-bolt rear-damper",
    "rear-coil-spring panhard-rod twist-beam",
  ],
  [
    "rear solid axle on coils, links and a Panhard rod",
    { rear: { layout: "coil-axle" } },
    "rear-axle-housing axle-link axle-link-bush panhard-rod panhard-rod-bush rear-coil-spring",
    "leaf-spring twist-beam",
  ],
  [
    "front strut",
    { front: { layout: "strut" } },
    "lower-arm lower-ball-joint top-mount top-mount-bearing front-damper coil-spring spring-seat bump-stop",
    "track-bar upper-ball-joint tension-link",
  ],
  [
    "front strut with two lower links",
    { front: { layout: "strut-two-links" } },
    "tension-link tension-link-bush tension-link-ball-joint control-link control-link-bush control-link-ball-joint",
    "lower-ball-joint track-bar",
  ],
  [
    "front double wishbone",
    { front: { layout: "double-wishbone" } },
    "upper-ball-joint upper-arm-bush lower-ball-joint lower-wishbone-bush",
    "track-bar tension-link",
  ],
  [
    "front solid axle with track bar and steering damper",
    { front: { layout: "solid-axle" } },
    "front-axle-housing track-bar track-bar-bush steering-damper front-axle-link-bush axle-ball-joint king-pin top-mount",
    "lower-arm front-subframe top-mount-bearing",
  ],
  [
    "rack, hydraulic",
    { steering: "rack-hydraulic" },
    "steering-rack rack-mounting rack-boot inner-tie-rod power-steering-pump power-steering-fluid power-steering-belt",
    "steering-box steering-assist-electric",
  ],
  [
    "rack, electric",
    { steering: "rack-electric" },
    "steering-rack steering-assist-electric inner-tie-rod",
    "power-steering-pump idler-arm",
  ],
  [
    "steering box with drop arm, idler and centre link",
    { steering: "box-hydraulic" },
    "steering-box drop-arm idler-arm centre-link linkage-tie-rod power-steering-pump",
    "steering-rack rack-boot inner-tie-rod",
  ],
  [
    "front-wheel drive",
    { drive: "front" },
    "drive-shaft outer-cv-joint inner-cv-joint intermediate-shaft-bearing",
    "propshaft differential",
  ],
  [
    "rear-wheel drive",
    { drive: "rear", rear: { layout: "multi-link" } },
    "propshaft propshaft-universal-joint propshaft-flexible-coupling propshaft-centre-bearing differential differential-mounting rear-outer-cv-joint rear-inner-cv-joint",
    "outer-cv-joint awd-coupling",
  ],
  [
    "all-wheel drive",
    { drive: "all" },
    "awd-coupling transfer-box front-propshaft propshaft differential outer-cv-joint",
    "free-wheeling-hub",
  ],
  [
    "part-time four-wheel drive",
    { drive: "part-time" },
    "four-wheel-drive-selector free-wheeling-hub transfer-box front-propshaft front-differential",
    "awd-coupling",
  ],
  [
    "air suspension",
    { springs: "air" },
    "air-spring air-line air-valve-block air-compressor ride-height-sensor suspension-control-unit adaptive-damper-control",
    "coil-spring rear-coil-spring",
  ],
  [
    "adjusted dampers on steel springs",
    { springs: "adaptive" },
    "adaptive-damper-control suspension-control-unit ride-height-sensor coil-spring",
    "air-spring air-compressor",
  ],
  [
    "drums at the rear",
    { rear: { brakes: "drum" } },
    "brake-drum brake-shoes wheel-cylinder shoe-adjuster drum-back-plate parking-brake",
    "",
  ],
  [
    "discs at the rear",
    { rear: { brakes: "disc" } },
    "brake-disc brake-caliper brake-pads parking-brake parking-brake-lever",
    "brake-drum brake-shoes wheel-cylinder",
  ],
  [
    "discs at the rear with parking brake shoes inside",
    { rear: { brakes: "disc-drum" } },
    "brake-disc brake-shoes shoe-adjuster",
    "brake-drum wheel-cylinder",
  ],
];

const words = (text: string) => text.split(" ").filter((word) => word !== "");

describe("every way of building a car has its parts", () => {
  test.each(BUILDS)("%s", (_, car, has, lacks) => {
    const parts = new Set(groundCar(knowledge, car).suspects.map((suspect) => suspect.part));
    expect(words(has).filter((part) => !parts.has(part))).toEqual([]);
    expect(words(lacks).filter((part) => parts.has(part))).toEqual([]);
  });

  test("on a car with rear drums discs, pads and calipers are suspected in front only", () => {
    const { suspects } = groundCar(knowledge, { rear: { brakes: "drum" } });
    const discs = ["brake-disc", "brake-caliper", "brake-pads", "brake-pad-spring", "brake-dust-shield"];
    const places = (part: string) =>
      new Set(suspects.filter((suspect) => suspect.part === part).map((suspect) => suspect.place));
    for (const part of discs) expect([...places(part)].sort()).toEqual(["front-left", "front-right"]);
  });

  // The spring stands apart from the damper on these; on a strut it stands round it. Common practice, no source.
  test.each([
    ["multi-link", false],
    ["twist-beam", false],
    ["rear-strut", true],
  ])("rear spring and damper of %s stand at one spot: %s", (layout, together) => {
    const shapes = knowledge.layouts.find(({ id }) => id === layout)?.shapes ?? [];
    const at = (part: string) => shapes.find((shape) => shape.parts.includes(part))?.points[0];
    expect(at("rear-coil-spring")).toBeDefined();
    expect(JSON.stringify(at("rear-coil-spring")) === JSON.stringify(at("rear-damper"))).toBe(together);
  });

  // Target set beforehand: 300 suspects.
  test.each([
    {},
    {
      drive: "front",
      front: { layout: "strut" },
      rear: { layout: "twist-beam", brakes: "disc" },
      springs: "steel",
      steering: "rack-electric",
      odometerKm: 120_000,
      ageYears: 9,
    },
    {
      drive: "rear",
      front: { layout: "strut-two-links" },
      rear: { layout: "multi-link" },
      steering: "rack-hydraulic",
      odometerKm: 180_000,
      ageYears: 12,
    },
  ])("a typical car has 300 suspects or more: %j", (car) => {
    expect(groundCar(knowledge, car).suspects.length).toBeGreaterThanOrEqual(300);
  });
});
