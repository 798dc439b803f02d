import { describe, expect, test } from "vitest";
import type { CompiledFault } from "../../lib/knowledge/schema/compiled.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";

/* What belongs to a repair of each kind. Common practice, no source. */
const knowledge = shippedKnowledge();
const words = (text: string) => text.split(" ");
const standing = knowledge.faults.filter((fault) => fault.ended === undefined);
const fault = (id: string): CompiledFault => {
  const found = standing.find((f) => f.id === id);
  if (found === undefined) throw new Error(`no fault ${id}`);
  return found;
};
const pairs = (id: string) => fault(id).remedy.paired.map(({ part, where }) => `${part}:${where}`);
const faultsOf = (parts: string) => standing.filter(({ part }) => words(parts).includes(part));

/** Fault -> parts that are renewed with it. */
const PAIRED: readonly (readonly [faults: string, paired: string])[] = [
  [
    "front-damper-worn front-damper-leaking front-damper-guide-worn front-damper-seized",
    "front-damper:other-side bump-stop:same-place top-mount:same-place",
  ],
  [
    "rear-damper-worn rear-damper-leaking rear-damper-seized",
    "rear-damper:other-side rear-bump-stop:same-place rear-damper-mount:same-place",
  ],
  ["coil-spring-broken coil-spring-sagged", "coil-spring:other-side"],
  ["rear-coil-spring-broken rear-coil-spring-sagged", "rear-coil-spring:other-side"],
  ["leaf-main-broken", "leaf-spring:other-side leaf-spring-u-bolts:same-place"],
  ["anti-roll-bar-link-worn anti-roll-bar-link-broken", "anti-roll-bar-link:other-side"],
  ["disc-worn disc-thickness-varies", "brake-disc:other-side brake-pads:both-sides"],
  ["pads-worn-out", "brake-pads:other-side"],
  ["shoes-worn-out", "brake-shoes:other-side"],
  [
    "lower-arm-bent lower-arm-corroded lower-arm-front-bush-worn lower-arm-front-bush-torn lower-arm-rear-bush-worn lower-arm-rear-bush-torn lower-wishbone-bush-worn",
    "anti-roll-bar-link:same-place",
  ],
  ["rear-adjuster-seized", "rear-eccentric-adjuster:other-side rear-lower-link:same-place"],
  ["tension-link-bush-leaking tension-link-bush-torn", "tension-link-bush:other-side"],
  ["twist-beam-bush-worn twist-beam-bush-torn", "twist-beam-bush:other-side"],
  ["inner-tie-rod-worn", "rack-boot:same-place"],
];

describe("repairs", () => {
  test.each(PAIRED)("%s: parts that are renewed together", (ids, paired) => {
    for (const id of words(ids)) expect(pairs(id), id).toEqual(expect.arrayContaining(words(paired)));
  });

  test("rubber bushes of arms, links, beams and axles are tightened at ride height", () => {
    const bushes = faultsOf(
      "lower-arm-front-bush lower-arm-rear-bush lower-wishbone-bush upper-arm-bush tension-link-bush control-link-bush rear-toe-link-bush rear-lower-link-bush rear-upper-link-bush rear-trailing-link-bush trailing-arm-bush twist-beam-bush axle-link-bush panhard-rod-bush track-bar-bush front-axle-link-bush leaf-spring-eye-bush leaf-spring-shackle lower-arm tension-link control-link rear-toe-link rear-lower-link rear-upper-link rear-trailing-link",
    ).filter(({ part, kind }) => part !== "leaf-spring-shackle" || kind === "worn");
    expect(bushes.length).toBeGreaterThan(30);
    expect(bushes.filter(({ remedy }) => !remedy.tightenAtRideHeight).map(({ id }) => id)).toEqual([]);
  });

  test("the wheels are aligned after anything that moves toe or camber", () => {
    const movers = faultsOf(
      "tie-rod-end inner-tie-rod linkage-tie-rod centre-link drop-arm idler-arm lower-arm lower-ball-joint upper-ball-joint lower-arm-front-bush lower-arm-rear-bush lower-wishbone-bush upper-arm-bush tension-link tension-link-bush control-link control-link-bush rear-toe-link rear-toe-link-bush rear-lower-link rear-lower-link-bush rear-upper-link rear-upper-link-bush rear-trailing-link rear-trailing-link-bush trailing-arm trailing-arm-bush twist-beam twist-beam-bush rear-eccentric-adjuster steering-knuckle front-subframe subframe-mounting rear-subframe rear-subframe-mounting toe-setting camber-setting castor-setting thrust-line",
    );
    // The arm keeps its place on the shaft's splines when its nut alone is renewed.
    const keepsPlace = new Set(["drop-arm-loose"]);
    expect(movers.length).toBeGreaterThan(60);
    expect(
      movers.filter(({ id, remedy }) => !remedy.alignment && !keepsPlace.has(id)).map(({ id }) => id),
    ).toEqual([]);
  });

  test("what is held by self-locking or stretched fasteners gets new ones", () => {
    const held = standing.filter(
      ({ part, kind }) =>
        ["worn", "torn", "broken", "bent"].includes(kind) &&
        /^(lower-|upper-|tension-|control-|tie-rod|inner-tie|rear-(toe|lower|upper|trailing)-link|trailing-arm|twist-beam|anti-roll-bar|rear-anti-roll-bar|panhard|track-bar|axle-link|leaf-spring)/.test(
          part,
        ) &&
        !part.endsWith("-setting"),
    );
    expect(held.length).toBeGreaterThan(50);
    // Springs that are dry or low by age alone are not undone at their bolts when greased.
    expect(
      held
        .filter(({ id, remedy }) => remedy.oneUse.length === 0 && id !== "leaf-spring-dry")
        .map(({ id }) => id),
    ).toEqual([]);
  });

  test("whoever takes a strut or coil spring apart is told of the spring, and of rebound stops", () => {
    const springs = faultsOf("coil-spring spring-seat top-mount-bearing bump-stop").filter(
      ({ kind }) => kind !== "misadjusted",
    );
    const dampers = words(
      "front-damper-worn front-damper-leaking front-damper-guide-worn front-damper-seized",
    ).map(fault);
    const silent = [...springs, ...dampers].filter(
      ({ remedy }) => !remedy.cautions.includes("spring-energy"),
    );
    expect(silent.map(({ id }) => id)).toEqual([]);
    const caution = knowledge.cautions.find(({ id }) => id === "spring-energy");
    expect(caution?.text).toMatch(/compressor/u);
    expect(caution?.text).toMatch(/internal rebound stop need more compression than usual/u);
  });
});
