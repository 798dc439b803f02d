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
/** Parts so small would be gone through set by set, and never be bounded. */
const BOUNDED = { mostEnumerated: 0 };
/** Rounding of the two sides that are compared. */
const DIGITS = 1e-9;

function expectWithin(model: Evidence, maxCost: number | undefined, label: string): number {
  const truth = bruteForce(model).marginals;
  const { low, high, cuts } = marginalBounds(model, {
    ...BOUNDED,
    ...(maxCost !== undefined && { maxCost }),
  });
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
        const { low, high } = marginalBounds(smallModel(seed, shape), { ...BOUNDED, maxCost });
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
      const model = tangled(seed, count, 14, 4);
      expect(posterior(model).approximate).toBe(true);
      expect(expectWithin(model, undefined, `seed ${seed}`)).toBeGreaterThan(0);
    }
  });

  it.each([
    [34, 14, 4, 0],
    [45, 16, 5, 0],
    [40, 13, 6, 0.3],
    [300, 12, 5, 0],
  ])(
    "are one point, by enumeration, with %i present findings of %i suspects, %i each; unreliable: %d",
    (count, suspects, parents, soft) => {
      const model = tangled(7, count, suspects, parents, soft);
      const { low, high, cuts } = marginalBounds(model);
      expect(cuts).toBeGreaterThan(0);
      expect(low).toEqual(high);
      expectSame(low, logEnumeration(model), 1e-9);
    },
  );

  it("are left as they are when there are too many suspects or findings to go through", () => {
    for (const model of [tangled(3, 60, 17, 5), tangled(3, 300, 16, 5)]) {
      const { low, high } = marginalBounds(model);
      expect(low.some((p, i) => p < high[i]!)).toBe(true);
      logEnumeration(model).forEach((p, i) => {
        expect(low[i]!).toBeLessThanOrEqual(p + DIGITS);
        expect(high[i]!).toBeGreaterThanOrEqual(p - DIGITS);
      });
    }
  });
});

/** Every finding with parents from all over. */
function tangled(seed: number, count: number, suspects: number, each: number, soft = 0): Evidence {
  const uniform = seededUniform(seed);
  const positives = Array.from({ length: count }, (): PositiveBit => {
    const parents = pick(uniform, suspects, each);
    const bit = {
      leak: 0.01 + 0.1 * uniform(),
      parents,
      w: Float64Array.from(parents, () => 0.05 + 0.6 * uniform()),
    };
    return uniform() < soft ? { ...bit, soft: [0.6 * uniform(), 0.2 + 0.8 * uniform()] } : bit;
  });
  const prior = Float64Array.from({ length: suspects }, () => 0.02 + 0.3 * uniform());
  return { prior, negatives: [], positives };
}

/** Marginals by going through every set in logs: plain products of 300 findings underflow. */
function logEnumeration({ prior, positives }: Evidence): number[] {
  const logs: number[] = [];
  for (let set = 0; set < 2 ** prior.length; set++) {
    let log = 0;
    prior.forEach((p, i) => {
      log += Math.log((set >> i) & 1 ? p : 1 - p);
    });
    for (const { leak, parents, w, soft = [0, 1] } of positives) {
      let absent = 1 - leak;
      parents.forEach((i, p) => {
        if ((set >> i) & 1) absent *= 1 - w[p]!;
      });
      log += Math.log(soft[0] * absent + soft[1] * (1 - absent));
    }
    logs.push(log);
  }
  const most = logs.reduce((a, b) => Math.max(a, b));
  const weights = logs.map((log) => Math.exp(log - most));
  const total = weights.reduce((a, b) => a + b);
  return Array.from(
    prior,
    (_, i) => weights.reduce((sum, v, set) => sum + ((set >> i) & 1 ? v : 0), 0) / total,
  );
}
