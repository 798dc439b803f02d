import { describe, expect, it } from "vitest";
import { wearView } from "../../lib/engine/index.ts";
import { weibullConditionalFailure } from "../../lib/maths/weibull-conditional-failure.ts";
import { weibullCumulativeHazard } from "../../lib/maths/weibull-cumulative-hazard.ts";
import { weibullHazard } from "../../lib/maths/weibull-hazard.ts";
import { weibullMeanLife } from "../../lib/maths/weibull-mean-life.ts";
import {
  fitWeibull,
  rankFitWeibull,
  type WatchedLife,
  weibullLogLikelihood,
} from "../support/fit-weibull.ts";
import { patch, tinyKnowledge } from "../support/tiny-knowledge.ts";

/*
 * D-07. Km of 38 vehicle dampers, F failed, the others still in use when they were looked at.
 * Source: Meeker and Escobar 1998, Statistical Methods for Reliability Data, p. 630 (after O'Connor 1985); from memory, and
 * it gives the estimates below, which were seen, to 7 digits.
 */
const DAMPERS: WatchedLife[] =
  "6700F 6950 7820 8790 9120F 9660 9820 11310 11690 11850 11880 12140 12200F 12870 13150F 13330 13470 14040 14300F 17520F 17540 17890 18450 18960 18980 19410 20100F 20100 20150 20320 20900F 22700F 23490 26510F 27410 27490F 27890 28100"
    .split(" ")
    .map((text) => ({ at: Number.parseFloat(text), failed: text.endsWith("F") }));

/* D-06. Source: the test snapshots of the R package weibulltools (ml_estimation, rank_regression) for the same data. */
describe("Weibull fit to 38 vehicle dampers, 27 of them censored", () => {
  const fit = fitWeibull(DAMPERS);

  it("has the published estimates", () => {
    expect(DAMPERS).toHaveLength(38);
    expect(DAMPERS.filter(({ failed }) => failed)).toHaveLength(11);
    expect(Math.log(fit.life)).toBeCloseTo(10.2298631, 6);
    expect(1 / fit.shape).toBeCloseTo(0.3164092, 5);
    expect(fit.life).toBeCloseTo(27_718.7, 1);
    expect(fit.shape).toBeCloseTo(3.1605, 4);
    expect(fit.logLikelihood).toBeCloseTo(-123.9954, 4);
  });

  it("is the likeliest: any other life or shape is less so", () => {
    for (const [life, shape] of [
      [1.01, 1],
      [0.99, 1],
      [1, 1.01],
      [1, 0.99],
      [1.02, 1.03],
    ] as const) {
      expect(weibullLogLikelihood(DAMPERS, fit.life * life, fit.shape * shape)).toBeLessThan(
        fit.logLikelihood,
      );
    }
  });

  it("has the published rank regression", () => {
    const { life, shape } = rankFitWeibull(DAMPERS);
    expect(Math.log(life)).toBeCloseTo(10.2595802, 6);
    expect(1 / shape).toBeCloseTo(0.3632051, 6);
  });
});

/* D-08. Source: worked from D-06 apart from this code; lives rounded to 1 km (B10 to 100 km). */
describe("what the damper fit says of lives", () => {
  const { life, shape } = fitWeibull(DAMPERS);
  const failedBy = (km: number) => -Math.expm1(-weibullCumulativeHazard(km, life, shape));

  it("gives B10, median and mean life", () => {
    expect(failedBy(13_550)).toBeLessThan(0.1);
    expect(failedBy(13_650)).toBeGreaterThan(0.1);
    expect(failedBy(24_683.5)).toBeLessThan(0.5);
    expect(failedBy(24_684.5)).toBeGreaterThan(0.5);
    expect(weibullMeanLife(life, shape)).toBeCloseTo(24_812, 0);
  });

  it.each([
    [10_000, 0.27138],
    [20_000, 0.60446],
  ])("gives the chance of failing in the next 10,000 km at %i km", (at, wanted) => {
    expect(weibullConditionalFailure(at, 10_000, life, shape)).toBeCloseTo(wanted, 5);
  });
});

/** The wear line of an invented part with that life and no modifiers, on a car that has it. */
function lineOf(life: object, odometerKm: number) {
  const { knowledge } = tinyKnowledge((records) =>
    patch(records, "faults/bar-link-worn.json", { life, modifiers: [], contexts: { "kerb-strike": 1.5 } }),
  );
  const [line] = wearView(
    knowledge,
    { odometerKm, front: { layout: "strut" } },
    { fitted: [{ part: "bar-link", atKm: 0 }], aheadKm: [10_000, 20_000] },
  ).filter(({ fault }) => fault === "bar-link-worn");
  if (line === undefined) throw new Error("the line is missing");
  return line;
}

/*
 * D-08 and F8 through the wear view. Source: R(t + x) / R(t) of the NIST/SEMATECH e-Handbook 8.1.6.2; the values worked
 * apart from this code, the parameters of F8 our own.
 */
describe("the wear view of a part that is known to be the first", () => {
  it.each([
    [27_718.72, 3.16047, 10_000, 0.27138],
    [27_718.72, 3.16047, 20_000, 0.60446],
    [150_000, 2.5, 100_000, 0.093023],
    [250_000, 1.3, 100_000, 0.039289],
  ])("life %d km, shape %d, at %i km: next 10,000 km", (km, shape, at, wanted) => {
    const line = lineOf({ km, shape }, at);
    expect(line.life).toEqual({ unit: "km", characteristic: km, shape, basis: "common-practice" });
    expect(line.ahead[0]?.ifNeverRenewed).toBeCloseTo(wanted, 5);
    expect(line.ahead[0]?.chance).toBeCloseTo(wanted, 5);
  });

  it("takes 20,000 km as 10,000 and then 10,000 more: R(t + 20) / R(t) is a product", () => {
    const first = lineOf({ km: 150_000, shape: 2.5 }, 100_000);
    const then = lineOf({ km: 150_000, shape: 2.5 }, 110_000);
    const [ten, twenty] = first.ahead;
    expect(1 - (twenty?.chance ?? 0)).toBeCloseTo(
      (1 - (ten?.chance ?? 0)) * (1 - (then.ahead[0]?.chance ?? 0)),
      12,
    );
  });
});

/* F8. Source: NIST/SEMATECH e-Handbook 8.1.6.2, parameters from memory, values worked apart from this code. */
describe("the handbook's example and others", () => {
  it("gives the density and the reliability", () => {
    const reliability = Math.exp(-weibullCumulativeHazard(1000, 5000, 1.5));
    expect(reliability).toBeCloseTo(0.914441, 6);
    expect(reliability * weibullHazard(1000, 5000, 1.5)).toBeCloseTo(0.000122685, 9);
  });

  /* Source: pump example, reliabilitynews.com 1q2001, life 1665.5, shape 11.6; the point value worked apart from this code. */
  it("gives the pump's reliability at 1000", () => {
    expect(Math.exp(-weibullCumulativeHazard(1000, 1665.5, 11.6))).toBeCloseTo(0.997312, 6);
  });

  /* Source: life adjustment factor a1 of ISO 281 for shape 1.5, worked apart; the older tabled .21 and .62 from memory. */
  it.each([
    [0.99, 0.2088, 0.21],
    [0.95, 0.6189, 0.62],
  ])("gives a bearing's life factor at %d", (reliability, wanted, tabled) => {
    const life = 1 / (-Math.log(0.9)) ** (1 / 1.5);
    const failedBy = (a1: number) => -Math.expm1(-weibullCumulativeHazard(a1, life, 1.5));
    expect(failedBy(1)).toBeCloseTo(0.1, 12);
    expect(failedBy(wanted)).toBeCloseTo(1 - reliability, 4);
    expect(Math.abs(wanted - tabled)).toBeLessThan(0.005);
  });
});

/* Source: Montgomery and Runger, Applied Statistics and Probability for Engineers, Example 4-25: shape 0.5, 5000 h. */
describe("the textbook's bearing", () => {
  it("lasts 10,000 h on average, and 6000 h with 0.334", () => {
    expect(weibullMeanLife(5000, 0.5)).toBeCloseTo(10_000, 6);
    expect(Math.exp(-weibullCumulativeHazard(6000, 5000, 0.5))).toBeCloseTo(0.334391, 6);
  });
});
