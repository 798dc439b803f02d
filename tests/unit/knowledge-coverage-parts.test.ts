import { describe, expect, test } from "vitest";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";

/*
 * Parts and the ways in which they fail that a workshop meets, and what raises a fault after work or a blow. Common
 * practice, no source; each line is a kind of cause, not a case.
 */
const knowledge = shippedKnowledge();
const faults = new Map(knowledge.faults.map((fault) => [fault.id, fault]));
const words = (text: string) => text.split(" ");

const FAULTS: readonly (readonly [cause: string, faults: string])[] = [
  ["rear dampers", "rear-damper-worn rear-damper-leaking rear-damper-seized"],
  [
    "their lower and upper mounts and bump stops",
    "rear-damper-bush-worn rear-damper-fixing-loose rear-damper-mount-worn rear-damper-top-loose rear-bump-stop-worn",
  ],
  [
    "rear springs, pads and seats",
    "rear-coil-spring-broken rear-coil-spring-sagged rear-coil-spring-out-of-seat rear-spring-ring-displaced rear-spring-seat-corroded",
  ],
  ["rear toe link", "rear-toe-link-bent rear-toe-link-bush-worn rear-toe-link-ball-joint-worn"],
  ["rear camber link", "rear-upper-link-bent rear-upper-link-bush-worn rear-upper-link-ball-joint-worn"],
  [
    "rear lateral link",
    "rear-lower-link-bent rear-lower-link-flexes rear-lower-link-bush-worn rear-lower-link-ball-joint-worn rear-lower-link-corroded",
  ],
  [
    "rear trailing link",
    "rear-trailing-link-bent rear-trailing-link-bush-torn rear-trailing-link-bush-leaking",
  ],
  ["eccentric adjuster", "rear-adjuster-seized rear-adjuster-slipped"],
  [
    "arms bent by a kerb",
    "lower-arm-bent control-link-bent tension-link-bent trailing-arm-bent twist-beam-bent",
  ],
  ["twist beam bushes", "twist-beam-bush-worn twist-beam-bush-torn twist-beam-bolt-loose"],
  [
    "subframe bushes and bolts",
    "subframe-bush-worn subframe-bolt-loose rear-subframe-bush-worn rear-subframe-bolt-loose",
  ],
  ["wheel bearings", "wheel-bearing-rough wheel-bearing-play hub-nut-loose hub-flange-run-out"],
  ["tyres", "tyre-belt-failed tyre-cupped tyre-flat-spotted tyre-out-of-round tyre-worn-out tyre-perished"],
  [
    "what wears tyres unevenly",
    "toe-too-far-in toe-too-far-out camber-too-negative camber-too-positive tyre-under-inflated tyre-over-inflated",
  ],
  [
    "wheels",
    "wheel-rim-bent wheel-cracked wheel-seat-dirty wheel-packed wheel-nuts-loose centring-ring-missing wheel-unbalanced wheel-wrong-size",
  ],
  [
    "propshaft",
    "propshaft-unbalanced universal-joint-worn universal-joint-seized flexible-coupling-split centre-bearing-worn centre-bearing-mount-torn slip-joint-worn propshaft-flange-bolts-loose",
  ],
  [
    "differential and its mounts",
    "differential-worn differential-mount-worn differential-bolts-loose pinion-bearing-worn",
  ],
  [
    "axle and CV joints",
    "outer-cv-joint-worn outer-cv-boot-torn inner-cv-joint-worn rear-outer-cv-joint-worn rear-inner-cv-joint-worn axle-shaft-bearing-worn",
  ],
  [
    "drum brakes",
    "drum-out-of-round shoes-worn-out shoe-lining-loose wheel-cylinder-leaking shoe-adjuster-seized",
  ],
  ["parking brake and its cable", "parking-brake-dragging parking-brake-slack parking-brake-lever-seized"],
  ["dust shields and stones", "shield-bent shield-rusted-through stone-in-shield stone-in-tread"],
  [
    "air springs and adjusted dampers: leaks, sags, control",
    "air-spring-leaking air-line-leaking air-valve-block-leaking air-compressor-worn ride-height-sensor-faulty suspension-heights-lost adaptive-damper-circuit-open",
  ],
  [
    "impostor: exhaust and heat shields",
    "exhaust-hanger-broken exhaust-touching-body silencer-baffle-loose heat-shield-loose exhaust-flexible-joint-leaking",
  ],
  ["impostor: undertray and arch liners", "undertray-loose wheel-arch-liner-loose"],
  ["impostor: spare wheel, jack, tools and loads in the boot", "spare-wheel-loose things-carried-loose"],
  ["impostor: seats, door and tailgate latches", "seat-rattles latch-rattles"],
  ["impostor: body mounts", "body-mount-worn"],
  [
    "impostor: engine and gearbox mounts",
    "engine-mount-worn engine-mount-broken gearbox-mount-worn torque-restrictor-worn",
  ],
  ["impostor: wheel trims", "wheel-trim-loose"],
];

describe("parts and faults", () => {
  test.each(FAULTS)("%s", (_, ids) => {
    expect(words(ids).filter((id) => faults.get(id)?.ended !== undefined || !faults.has(id))).toEqual([]);
  });

  test("every pattern of tyre wear can be told and seen", () => {
    const features = new Set(knowledge.features.map(({ id }) => id));
    const wanted = words(
      "wear-cupped wear-feathered wear-both-shoulders wear-centre wear-flat-spot wear-inner-edge wear-outer-edge wear-one-tyre",
    );
    expect(wanted.filter((id) => !features.has(id))).toEqual([]);
  });
});

/** What happened lately, and faults that are then likelier than on another car. */
const AFTER: readonly (readonly [context: string, faults: string])[] = [
  [
    "tyres-fitted-lately",
    "wheel-nuts-loose wheel-stud-broken wheel-fixing-wrong wheel-seat-dirty centring-ring-missing tyre-bead-not-seated wheel-unbalanced wheel-trim-loose spare-wheel-loose tyre-wrong-direction",
  ],
  [
    "brakes-done-lately",
    "wheel-nuts-loose caliper-bolt-loose shield-bent pad-spring-missing pads-fitted-wrong brake-fluid-aerated disc-seating-fault rear-damper-fixing-loose thing-left-behind shoe-adjuster-over-tight",
  ],
  [
    "suspension-done-lately",
    "front-damper-top-nut-loose front-damper-lower-fixing-loose top-mount-nuts-loose rear-damper-top-loose rear-damper-fixing-loose anti-roll-bar-link-nut-loose coil-spring-out-of-seat rear-coil-spring-out-of-seat rear-spring-ring-displaced wheel-nuts-loose thing-left-behind lower-arm-bush-clamped-at-droop shield-bent toe-too-far-out",
  ],
  [
    "arms-done-lately",
    "lower-arm-bolt-loose lower-arm-bush-clamped-at-droop rear-link-bolt-loose rear-link-bush-clamped-at-droop anti-roll-bar-link-nut-loose tie-rod-pin-nut-loose toe-too-far-in toe-too-far-out steering-wheel-off-centre wheel-nuts-loose shield-bent thing-left-behind hub-nut-loose",
  ],
  [
    "alignment-done-lately",
    "tie-rod-lock-nut-loose rear-adjuster-slipped rear-link-bolt-loose steering-wheel-off-centre steering-torque-sensor-drifted",
  ],
  [
    "bearing-done-lately",
    "hub-nut-loose caliper-bolt-loose shield-bent wheel-nuts-loose tie-rod-pin-nut-loose thing-left-behind",
  ],
  [
    "steering-done-lately",
    "column-pinch-bolt-loose rack-mounting-loose tie-rod-lock-nut-loose steering-fluid-low steering-wheel-off-centre",
  ],
  [
    "under-car-work-lately",
    "wheel-nuts-loose undertray-loose underbody-pipe-off-clip thing-left-behind subframe-bolt-loose coil-spring-out-of-seat rear-lower-link-bent spare-wheel-loose things-carried-loose tyre-flat-spotted",
  ],
  [
    "kerb-strike",
    "wheel-rim-bent lower-arm-bent tie-rod-bent rear-lower-link-bent rear-toe-link-bent twist-beam-bent tyre-belt-failed camber-too-negative toe-too-far-out wheel-bearing-rough hub-flange-run-out subframe-shifted",
  ],
  [
    "pothole-strike",
    "wheel-rim-bent wheel-cracked tyre-belt-failed coil-spring-broken top-mount-worn lower-arm-bent wheel-bearing-rough front-damper-leaking rear-damper-leaking bump-stop-worn",
  ],
  [
    "long-standing",
    "tyre-flat-spotted disc-rusted caliper-piston-seized parking-brake-dragging shoe-lining-loose front-damper-seized wheel-cylinder-seized tyre-under-inflated leaf-shackle-seized",
  ],
  [
    "snow-mud",
    "wheel-packed stone-in-shield shield-bent wheel-arch-liner-loose stone-in-tread undertray-loose",
  ],
  [
    "heavy-load-lately",
    "rear-coil-spring-broken rear-coil-spring-sagged leaf-main-broken things-carried-loose",
  ],
];

describe("what was done to the car lately raises the faults that follow from it", () => {
  test.each(AFTER)("%s", (context, ids) => {
    expect(knowledge.contexts.some(({ id }) => id === context)).toBe(true);
    expect(words(ids).filter((id) => !((faults.get(id)?.contexts[context] ?? 1) > 1))).toEqual([]);
  });
});
