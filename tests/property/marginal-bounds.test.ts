import { describe, expect, it } from "vitest";
import { type Evidence, marginalBounds, type PositiveBit, posterior } from "../../lib/engine/core/index.ts";
import { bruteForce } from "../support/brute-force.ts";
import { expectSame } from "../support/expect-same.ts";
import { pick, seededUniform, smallModel } from "../support/random-models.ts";

/* Bounds of the marginals when links are cut, against enumeration over every set of suspects. */

const shape = {
  suspects: [2, 9],
  positives: [2, 9],
  negatives: [0, 5],
  parents: [1, 5],
} as const;
/** Rounding of the two sides that are compared. */
const DIGITS = 1e-9;

function expectWithin(model: Evidence, maxCost: number | undefined, label: string): number {
  const truth = bruteForce(model).marginals;
  const { low, high, cuts } = marginalBounds(model, maxCost === undefined ? {} : { maxCost });
  truth.forEach((p, i) => {
    expect(low[i]!, `${label}, suspect ${i}`).toBeLessThanOrEqual(p + DIGITS);
    expect(high[i]!, `${label}, suspect ${i}`).toBeGreaterThanOrEqual(p - DIGITS);
    expect(low[i]! >= 0 && high[i]! <= 1).toBe(true);
  });
  return cuts;
}

describe("bounds of marginals", () => {
  it.each([
    ["reliable answers", 0],
    ["some unreliable answers", 0.3],
  ])("hold the true marginals of 300 small networks at three small budgets: %s", (_, soft) => {
    let cutRuns = 0;
    for (let seed = 1; seed <= 300; seed++) {
      const model = smallModel(seed, { ...shape, soft });
      for (const maxCost of [0, 20, 100]) {
        if (expectWithin(model, maxCost, `seed ${seed}, budget ${maxCost}`) > 0) cutRuns++;
      }
    }
    expect(cutRuns).toBeGreaterThan(300);
  });

  it("say something: they are narrower than 0 to 1, and narrower with more budget on average", () => {
    const widths = [0, 100].map((maxCost) => {
      let sum = 0;
      let count = 0;
      for (let seed = 1; seed <= 200; seed++) {
        const { low, high } = marginalBounds(smallModel(seed, shape), { maxCost });
        low.forEach((p, i) => {
          sum += high[i]! - p;
          count++;
        });
      }
      return sum / count;
    });
    expect(widths[0]).toBeLessThan(0.9);
    expect(widths[1]).toBeLessThan(widths[0]!);
  });

  it("are one point, the exact marginal, when nothing is cut", () => {
    for (let seed = 1; seed <= 200; seed++) {
      const model = smallModel(seed, { ...shape, soft: 0.2 });
      const { low, high, cuts } = marginalBounds(model, { maxCost: Number.POSITIVE_INFINITY });
      expect(cuts).toBe(0);
      expect(low).toEqual(high);
      expectSame(low, bruteForce(model).marginals, 1e-10);
    }
  });

  it("leave a part of the network that lost no link exact", () => {
    const tangled = smallModel(3, { ...shape, suspects: [8, 8], positives: [9, 9], parents: [4, 4] });
    const lone: PositiveBit = { leak: 0.1, parents: Int32Array.of(8), w: Float64Array.of(0.5) };
    const model = {
      ...tangled,
      prior: Float64Array.of(...tangled.prior, 0.2),
      positives: [...tangled.positives, lone],
    };
    const { low, high, cuts } = marginalBounds(model, { maxCost: 50 });
    expect(cuts).toBeGreaterThan(0);
    expect(low[8]).toBe(high[8]);
    expectSame([low[8]!], [bruteForce(model).marginals[8]!], 1e-12);
  });

  it.each([34, 45])("hold with %i present findings without any locality, at the default budget", (count) => {
    for (let seed = 1; seed <= 2; seed++) {
      const uniform = seededUniform(seed);
      const positives = Array.from({ length: count }, (): PositiveBit => {
        const parents = pick(uniform, 14, 4);
        return {
          leak: 0.01 + 0.1 * uniform(),
          parents,
          w: Float64Array.from(parents, () => 0.05 + 0.6 * uniform()),
        };
      });
      const prior = Float64Array.from({ length: 14 }, () => 0.02 + 0.3 * uniform());
      const model = { prior, negatives: [], positives };
      expect(posterior(model).approximate).toBe(true);
      expect(expectWithin(model, undefined, `seed ${seed}`)).toBeGreaterThan(0);
    }
  });
});
