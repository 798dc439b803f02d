import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { brierOfBins, brierOfClasses, brierParts, logLoss } from "../../lib/maths/brier.ts";

/*
 * Definitions: Brier 1950, Murphy 1973. The numbers of the worked case are our own; its answers were worked apart from
 * this code (references F7).
 */
const forecasts = [0.1, 0.1, 0.1, 0.3, 0.3, 0.3, 0.3, 0.7, 0.7, 0.9];
const outcomes = [0, 0, 1, 0, 0, 1, 0, 1, 0, 1];

describe("the worked case of ten forecasts", () => {
  const parts = brierParts(forecasts, outcomes);

  test("score, reliability, resolution, uncertainty, skill", () => {
    expect(parts.score).toBeCloseTo(0.218, 6);
    expect(parts.reliability).toBeCloseTo(0.026333, 6);
    expect(parts.resolution).toBeCloseTo(0.048333, 6);
    expect(parts.uncertainty).toBeCloseTo(0.24, 6);
    expect(parts.skill).toBeCloseTo(0.091667, 6);
    expect(parts.within).toBeCloseTo(0, 12);
    expect(parts.bins.map((b) => b.count)).toEqual([3, 4, 2, 1]);
  });

  test("the same from the sums of each bin, which add up by hand", () => {
    // Bins 0.1, 0.3, 0.7 and 0.9; squares: 0.01 + 0.01 + 0.81, 3 * 0.09 + 0.49, 0.09 + 0.49, 0.01.
    const sums = [
      { count: 3, forecast: 0.3, observed: 1, squares: 0.83 },
      { count: 4, forecast: 1.2, observed: 1, squares: 0.76 },
      { count: 2, forecast: 1.4, observed: 1, squares: 0.58 },
      { count: 1, forecast: 0.9, observed: 1, squares: 0.01 },
    ];
    const { bins, ...figures } = brierOfBins(sums);
    expect(bins.map((b) => b.observed)).toEqual([1 / 3, 1 / 4, 1 / 2, 1]);
    expect(figures.score).toBeCloseTo(0.218, 6);
    expect(figures.reliability).toBeCloseTo(0.026333, 6);
    expect(figures.resolution).toBeCloseTo(0.048333, 6);
    expect(figures.uncertainty).toBeCloseTo(0.24, 6);
    expect(() => brierOfBins([])).toThrow(RangeError);
    expect(() => brierOfBins([{ count: 0, forecast: 0, observed: 0, squares: 0 }])).toThrow(RangeError);
  });

  test("log loss", () => {
    expect(logLoss(forecasts, outcomes)).toBeCloseTo(0.645331, 6);
  });

  test("several classes: the two-sided form, 0 to 2", () => {
    expect(brierOfClasses([0.7, 0.2, 0.1], 0)).toBeCloseTo(0.14, 12);
    expect(brierOfClasses([0.7, 0.2, 0.1], 2)).toBeCloseTo(1.34, 12);
    expect(brierOfClasses([0, 1], 0)).toBe(2);
  });
});

/* Source: the definition; a forecast that is always 0.5 scores 0.25 whatever comes. */
test("always 0.5 scores 0.25, and has no resolution", () => {
  fc.assert(
    fc.property(fc.array(fc.constantFrom(0, 1), { minLength: 1, maxLength: 50 }), (came) => {
      const parts = brierParts(
        came.map(() => 0.5),
        came,
      );
      expect(parts.score).toBeCloseTo(0.25, 12);
      expect(parts.resolution).toBeCloseTo(0, 12);
    }),
  );
});

/* Source: Stephenson, Coelho and Jolliffe 2008: with bins the parts add up once the scatter within bins is counted. */
test("in deciles the parts add up to the score, and what is within is the scatter of each bin", () => {
  const pair = fc.tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.constantFrom(0, 1));
  fc.assert(
    fc.property(fc.array(pair, { minLength: 1, maxLength: 80 }), (pairs) => {
      const f = pairs.map(([p]) => p);
      const o = pairs.map(([, came]) => came);
      const decile = (p: number): number => Math.min(9, Math.floor(10 * p));
      const parts = brierParts(f, o, decile);
      let within = 0;
      for (const bin of new Set(f.map(decile))) {
        const own = pairs.filter(([p]) => decile(p) === bin);
        const mean = own.reduce((sum, [p]) => sum + p, 0) / own.length;
        const rate = own.reduce<number>((sum, [, came]) => sum + came, 0) / own.length;
        for (const [p, came] of own) within += ((p - mean) ** 2 - 2 * (p - mean) * (came - rate)) / f.length;
      }
      expect(parts.within).toBeCloseTo(within, 10);
      expect(parts.bins.reduce((sum, b) => sum + b.count, 0)).toBe(f.length);
    }),
  );
});

test("no forecast, or lengths that differ, is an error", () => {
  expect(() => brierParts([], [])).toThrowError(RangeError);
  expect(() => brierParts([0.5], [])).toThrowError(RangeError);
});
