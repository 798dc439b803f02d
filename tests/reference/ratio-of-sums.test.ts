import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { ratioOfSums } from "../../lib/maths/ratio-of-sums.ts";

/*
 * Formula from memory of Cochran, Sampling Techniques, 1977, 6.4 (ratio estimator). Held to what any handbook has: the
 * standard error of a mean, s / sqrt(n), and to Quenouille's and Tukey's jackknife, which shares no formula with it.
 */
describe("the ratio of two sums over clusters", () => {
  test("clusters of one give the mean and its textbook standard error", () => {
    // 2, 4, 4, 4, 5, 5, 7, 9: mean 5, sum of squares about it 32, so s / sqrt(n) = sqrt(32 / 7 / 8).
    const values = [2, 4, 4, 4, 5, 5, 7, 9];
    const { ratio, error } = ratioOfSums(
      values,
      values.map(() => 1),
    );
    expect(ratio).toBeCloseTo(5, 12);
    expect(error).toBeCloseTo(Math.sqrt(32 / 7 / 8), 12);
  });

  test("what lies in a cluster twice says nothing new", () => {
    const once = ratioOfSums([1, 0, 1, 1, 0, 1], [1, 1, 1, 1, 1, 1]);
    const twice = ratioOfSums([2, 0, 2, 2, 0, 2], [2, 2, 2, 2, 2, 2]);
    expect(twice.ratio).toBeCloseTo(once.ratio, 12);
    expect(twice.error).toBeCloseTo(once.error, 12);
  });

  test("many uneven clusters: near the jackknife", () => {
    const cluster = fc.tuple(fc.integer({ min: 0, max: 8 }), fc.integer({ min: 4, max: 12 }));
    fc.assert(
      fc.property(fc.array(cluster, { minLength: 60, maxLength: 80 }), (clusters) => {
        const above = clusters.map(([a]) => a);
        const below = clusters.map(([, b]) => b);
        const { ratio, error } = ratioOfSums(above, below);
        const over = above.reduce((a, b) => a + b, 0);
        const under = below.reduce((a, b) => a + b, 0);
        const left = clusters.map(([a, b]) => (over - a) / (under - b));
        const middle = left.reduce((a, b) => a + b, 0) / left.length;
        const squares = left.reduce((sum, r) => sum + (r - middle) ** 2, 0);
        const jackknife = Math.sqrt((squares * (left.length - 1)) / left.length);
        expect(ratio).toBeCloseTo(over / under, 12);
        expect(Math.abs(error - jackknife)).toBeLessThanOrEqual(0.05 * jackknife);
      }),
      { seed: 11, numRuns: 50 },
    );
  });

  test("one cluster says nothing of the error; nothing below is refused", () => {
    expect(ratioOfSums([1], [2])).toEqual({ ratio: 0.5, error: 0 });
    expect(() => ratioOfSums([1], [0])).toThrow(RangeError);
    expect(() => ratioOfSums([1], [1, 1])).toThrow(RangeError);
  });
});
