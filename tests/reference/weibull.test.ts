import { describe, expect, it } from "vitest";
import { gamma } from "../../lib/maths/gamma.ts";
import { weibullConditionalFailure } from "../../lib/maths/weibull-conditional-failure.ts";
import { weibullCumulativeHazard } from "../../lib/maths/weibull-cumulative-hazard.ts";
import { weibullHazard } from "../../lib/maths/weibull-hazard.ts";
import { weibullMeanLife } from "../../lib/maths/weibull-mean-life.ts";

/*
 * Source: NIST/SEMATECH e-Handbook of Statistical Methods 8.1.6.2, example shape 1.5, life 5000, t 1000
 * (parameters from memory); values worked apart from this code.
 */
describe("the handbook's Weibull example", () => {
  it("gives F, the hazard and the mean life", () => {
    expect(-Math.expm1(-weibullCumulativeHazard(1000, 5000, 1.5))).toBeCloseTo(0.085559, 6);
    expect(weibullHazard(1000, 5000, 1.5)).toBeCloseTo(0.000134164, 9);
    expect(weibullMeanLife(5000, 1.5)).toBeCloseTo(4513.73, 2);
  });
});

/* Source: R(t + x) / R(t) of the same handbook; parameters are our own, values worked apart from this code. */
describe("failing within the next 10,000 km at 100,000 km", () => {
  it.each([
    [2.5, 150_000, 0.093023],
    [1.3, 250_000, 0.039289],
  ])("shape %f, life %i km", (shape, life, wanted) => {
    expect(weibullConditionalFailure(100_000, 10_000, life, shape)).toBeCloseTo(wanted, 6);
  });
});

/* Source: gamma(n) = (n - 1)! and gamma(1/2) = sqrt(pi), Abramowitz & Stegun 6.1 (from memory). */
describe("the gamma function", () => {
  it("gives factorials and the square root of pi", () => {
    let factorial = 1;
    for (let n = 1; n <= 20; n++) {
      expect(Math.abs(gamma(n) / factorial - 1)).toBeLessThan(1e-13);
      factorial *= n;
    }
    expect(gamma(0.5)).toBeCloseTo(Math.sqrt(Math.PI), 13);
    expect(gamma(0.25) * gamma(0.75)).toBeCloseTo(Math.PI * Math.SQRT2, 12);
  });
});
