import { describe, expect, test } from "vitest";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";

/*
 * Categories of Directive 2014/45/EU, Annex I (text as replaced by the corrigendum OJ L 219, 22.8.2019, p. 25), beside the
 * inspection manual of Great Britain, which keeps the item numbers. m minor, M major, D dangerous; "seen" where the text
 * or the manual's row was at hand, "memory" where both were not: the knowledge must then say so.
 */
const ROWS: readonly (readonly [item: string, categories: string, status: "seen" | "memory"])[] = [
  ["2.1.1 a", "M", "seen"],
  ["2.1.1 b", "M D", "seen"],
  ["2.1.1 c", "M D", "seen"],
  ["2.1.1 d", "M D", "seen"],
  ["2.1.1 e", "m M", "seen"],
  ["2.1.2 a", "M D", "seen"],
  ["2.1.2 b", "M D", "seen"],
  ["2.1.2 c", "M D", "seen"],
  ["2.1.2 d", "M D", "seen"],
  ["2.1.3 a", "M D", "seen"],
  ["2.1.3 b", "M D", "seen"],
  ["2.1.3 c", "M D", "seen"],
  ["2.1.3 d", "M", "seen"],
  ["2.1.3 e", "M", "seen"],
  ["2.1.3 f", "M D", "seen"],
  ["2.1.3 g", "m M", "seen"],
  ["2.1.4 a", "M", "memory"],
  ["2.1.4 b", "M", "memory"],
  ["2.1.5 a", "M", "memory"],
  ["2.1.5 b", "m M", "memory"],
  ["2.1.5 c", "M D", "memory"],
  ["2.1.5 d", "M D", "memory"],
  ["2.2.1 a", "M D", "memory"],
  ["2.2.2 a", "M", "memory"],
  ["2.2.2 b", "M", "memory"],
  ["2.2.2 c", "M", "memory"],
  ["2.2.2 d", "M D", "memory"],
  ["2.3", "M D", "memory"],
  ["2.4", "m M", "memory"],
  ["2.6 a", "M", "memory"],
  ["2.6 b", "M D", "memory"],
  ["2.6 c", "M", "memory"],
  ["5.1.1 a", "D", "seen"],
  ["5.1.1 b", "M D", "seen"],
  ["5.1.1 c", "M D", "seen"],
  ["5.1.2 a", "D", "seen"],
  ["5.1.2 b", "M D", "seen"],
  ["5.1.2 c", "M D", "seen"],
  ["5.1.2 d", "M D", "seen"],
  ["5.1.3 a", "M D", "seen"],
  ["5.1.3 b", "M D", "memory"],
  ["5.2.1 a", "M D", "memory"],
  ["5.2.1 b", "M D", "memory"],
  ["5.2.2 a", "D", "memory"],
  ["5.2.2 b", "M D", "memory"],
  ["5.2.2 c", "M D", "memory"],
  ["5.2.2 d", "M", "memory"],
  ["5.2.3 a", "M D", "memory"],
  ["5.2.3 b", "M", "memory"],
  ["5.2.3 c", "M", "memory"],
  ["5.2.3 d", "M D", "memory"],
  ["5.2.3 e", "M D", "memory"],
  ["5.2.3 f", "m M", "memory"],
  ["5.2.3 g", "M D", "memory"],
  ["5.2.3 h", "m M", "seen"],
  ["5.3.1 a", "M D", "memory"],
  ["5.3.1 b", "M D", "memory"],
  ["5.3.1 c", "M D", "memory"],
  ["5.3.1 d", "M D", "memory"],
  ["5.3.2 a", "m M", "memory"],
  ["5.3.2 b", "M", "memory"],
  ["5.3.3 a", "M D", "memory"],
  ["5.3.3 b", "M D", "memory"],
  ["5.3.3 c", "M D", "memory"],
  ["5.3.4 a", "M D", "memory"],
  ["5.3.4 b", "m M", "memory"],
  ["5.3.5 a", "D", "memory"],
  ["5.3.5 b", "M D", "memory"],
  ["5.3.5 c", "M", "memory"],
  ["5.3.5 d", "M", "memory"],
  ["6.1.7 g", "m M", "memory"],
];

const LETTER = { minor: "m", major: "M", dangerous: "D" } as const;
const ITEMS = new Map(ROWS.map(([item, categories, status]) => [item, { categories, status }]));

/**
 * Faults of steering, suspension, wheels, tyres and bearings that no item of the annex covers: noise, comfort, or wear
 * that the annex does not speak of. A fault of these groups must have an item or stand here with the reason.
 */
const WITHOUT: Readonly<Record<string, string>> = {
  "adaptive-damper-circuit-open": "the annex knows air suspension and dampers, not their adjustment",
  "air-compressor-mount-torn": "noise only",
  "anti-roll-bar-bush-dry": "noise only",
  "balance-weight-touching": "noise only",
  "bump-stop-worn": "stops are not named in the annex",
  "coil-spring-sagged":
    "height is no item of the annex; Maryland COMAR 11.22.03.03 rejects a corner 2 in low",
  "leaf-shackle-seized": "stiff, without play or damage",
  "leaf-spring-dry": "noise only",
  "leaf-spring-sagged": "height is no item of the annex",
  "lower-arm-bush-clamped-at-droop": "no damage yet",
  "rear-adjuster-seized": "no damage: it cannot be set",
  "rear-anti-roll-bar-bush-dry": "noise only",
  "rear-bump-stop-worn": "stops are not named in the annex",
  "rear-coil-spring-sagged": "height is no item of the annex",
  "rear-link-bush-clamped-at-droop": "no damage yet",
  "rear-spring-ring-displaced": "noise only, until spring or pan is damaged",
  "rear-trailing-link-bush-leaking": "fluid lost, rubber whole",
  "ride-height-sensor-broken": "the sensor is no item of the annex",
  "ride-height-sensor-faulty": "the sensor is no item of the annex",
  "spring-pad-worn": "noise only, until spring or seat is damaged",
  "steering-damper-loose": "the steering damper is no item of the annex",
  "steering-damper-worn": "the steering damper is no item of the annex",
  "subframe-shifted": "within 2.4 only by its effect on alignment",
  "suspension-heights-lost": "a lost setting, nothing damaged",
  "suspension-relay-stuck": "electrical, before the suspension fails",
  "tension-link-bush-wrong": "a bush of another kind, whole",
  "tyre-conicity": "built into a whole tyre",
  "tyre-cupped": "wear pattern above the limit of depth",
  "tyre-flat-spotted": "wear pattern above the limit of depth",
  "tyre-fluid-inside": "balance only",
  "tyre-out-of-round": "run-out only",
  "tyre-over-inflated": "the annex names low pressure only",
  "tyre-sensor-loose": "until its lamp lights",
  "tyre-tread-noisy": "noise only",
  "tyre-wrong-direction": "the annex does not name the direction of rolling",
  "wheel-packed": "goes with washing",
  "wheel-seat-dirty": "until a fixing is loose",
  "wheel-unbalanced": "balance is no item of the annex",
  "stone-in-tread": "noise only",
};

const knowledge = shippedKnowledge();
const standing = knowledge.faults.filter((fault) => fault.ended === undefined);

describe("severity of faults in the words of Directive 2014/45/EU", () => {
  test("each stands in a category that its item has", () => {
    const rated = standing.filter(({ severity }) => ITEMS.has(severity.item ?? ""));
    expect(rated.length).toBeGreaterThan(130);
    const wrong = rated
      .filter(
        ({ severity }) =>
          !(ITEMS.get(severity.item ?? "")?.categories.split(" ") ?? []).includes(LETTER[severity.word]),
      )
      .map(({ id, severity }) => `${id}: ${severity.item} ${severity.word}`);
    expect(wrong).toEqual([]);
  });

  test("items of steering, axles, wheels, tyres and suspension are ones that the annex has", () => {
    const unknown = standing
      .filter(({ severity }) => /^(2|5)\./u.test(severity.item ?? ""))
      .filter(({ severity }) => !ITEMS.has(severity.item ?? ""))
      .map(({ id, severity }) => `${id}: ${severity.item}`);
    expect(unknown).toEqual([]);
  });

  test("a category that was not seen is said to be from memory", () => {
    const silent = standing
      .filter(({ severity }) => severity.item !== undefined && ITEMS.get(severity.item)?.status !== "seen")
      .filter(({ severity }) => !severity.reason.includes("from memory"))
      .map(({ id, severity }) => `${id}: ${severity.item}`);
    expect(silent).toEqual([]);
  });

  test("a fault of steering, suspension, wheels, tyres or bearings has its item, or a reason why none", () => {
    const groups = new Map(knowledge.parts.map(({ id, group }) => [id, group]));
    const without = standing
      .filter(({ severity }) => severity.item === undefined)
      .filter(({ part }) =>
        ["steering", "suspension", "wheels", "tyres", "bearings", "alignment"].includes(
          groups.get(part) ?? "",
        ),
      )
      .map(({ id }) => id);
    expect(without.filter((id) => WITHOUT[id] === undefined)).toEqual([]);
    // A reason that is no longer needed is a defect of this list.
    expect(Object.keys(WITHOUT).filter((id) => !without.includes(id))).toEqual([]);
  });
});
