import { describe, expect, test } from "vitest";
import { byExpectedCost, shippedChoice } from "../../lib/engine/policies/index.ts";
import { weigh } from "../../lib/engine/index.ts";
import { engineWay } from "../support/engine-way.ts";
import { smallInstance } from "../support/small-instance.ts";
import { smallCosts } from "../support/small-optimum.ts";

/*
 * The optimum is worked out by dynamic programming over everything that can be known and every set-up, on the definition
 * of the model alone (tests/support/small-optimum.ts); bars as our own goals set them.
 */
describe("the shipped policy against the optimum on small random instances", () => {
  const ratios = Array.from({ length: 12 }, (_, k) => {
    const instance = smallInstance(400 + k);
    const exact = smallCosts(instance);
    return exact.of(engineWay(instance, shippedChoice, byExpectedCost(instance.costs))) / exact.optimum();
  });

  test("nothing is cheaper than the optimum", () => {
    for (const ratio of ratios) expect(ratio).toBeGreaterThan(1 - 1e-9);
  });

  test("the mean over 12 is within 3 percent of it", () => {
    expect(ratios.reduce((sum, r) => sum + r, 0) / ratios.length).toBeLessThan(1.03);
  });
});

test("the instance and the engine speak of the same model: chances of the faults, by enumeration", () => {
  const instance = smallInstance(7);
  const { prior, shows, leak, complaint, grounded } = instance;
  const present = prior.map(() => 0);
  let evidence = 0;
  for (let set = 0; set < 1 << prior.length; set++) {
    let p = 1;
    let silent = 1 - leak;
    prior.forEach((own, i) => {
      const there = (set >> i) & 1;
      p *= there ? own : 1 - own;
      if (there) silent *= 1 - shows[i]!;
    });
    evidence += p * (1 - silent);
    prior.forEach((_, i) => {
      if ((set >> i) & 1) present[i]! += p * (1 - silent);
    });
  }
  const { ranking } = weigh(grounded, [{ finding: complaint, state: "present", by: "report" }]);
  for (const r of ranking) {
    expect(r.present).toBeCloseTo(
      present[instance.repairs.indexOf(`${r.suspect.part}@${r.suspect.place}`)]! / evidence,
      10,
    );
  }
});

test("repairing at once costs what the plain sum says: one fault, no other cause", () => {
  const instance = smallInstance(11, 1, 1);
  const exact = smallCosts(instance);
  const fires = instance.prior[0]! * instance.shows[0]!;
  const evidence = 1 - (1 - fires) * (1 - instance.leak);
  const cured = (fires * (1 - instance.leak)) / evidence;
  expect(exact.of(() => ({ repairs: [0] }))).toBeCloseTo(
    instance.repairMinutes[0]! + (1 - cured) * instance.costs.refer.minutes,
    9,
  );
  // Handed over at once: finding it, and the repair where it did fire.
  expect(exact.of(() => ({ repairs: [] }))).toBeCloseTo(
    instance.costs.refer.minutes + (fires / evidence) * instance.repairMinutes[0]!,
    9,
  );
});
