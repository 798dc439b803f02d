import { describe, expect, it } from "vitest";
import { type Evidence, posterior, type PositiveBit } from "../../lib/engine/core/index.ts";
import { quickscore } from "../support/quickscore.ts";

function bit(leak: number, links: Readonly<Record<number, number>>): PositiveBit {
  return {
    leak,
    parents: Int32Array.from(Object.keys(links), Number),
    w: Float64Array.from(Object.values(links)),
  };
}

/** The same finding, answered as absent. */
function absent({ leak, parents, w }: PositiveBit): Evidence["negatives"][number] {
  return { leakQ: 1 - leak, parents, q: w.map((strength) => 1 - strength) };
}

/*
 * Source: Russell & Norvig, Artificial Intelligence: A Modern Approach, the fever example of a noisy-OR
 * (inhibitors cold 0.6, flu 0.2, malaria 0.1; the table was seen in teaching slides, the book is from memory).
 */
describe("fever: a noisy-OR of cold, flu and malaria", () => {
  const COLD = 0;
  const FLU = 1;
  const MALARIA = 2;
  const links = { [COLD]: 0.4, [FLU]: 0.8, [MALARIA]: 0.9 };
  const table: readonly [string, readonly number[], number][] = [
    ["cold", [COLD], 0.4],
    ["flu", [FLU], 0.8],
    ["malaria", [MALARIA], 0.9],
    ["cold and flu", [COLD, FLU], 0.88],
    ["cold and malaria", [COLD, MALARIA], 0.94],
    ["flu and malaria", [FLU, MALARIA], 0.98],
    ["all three", [COLD, FLU, MALARIA], 0.988],
  ];
  it.each(table)("P(no fever | %s)", (_, present, fever) => {
    const prior = Float64Array.from([COLD, FLU, MALARIA], (i) => (present.includes(i) ? 1 : 0));
    const none = absent({ ...bit(0, links), leak: 0 });
    const { logEvidence } = posterior({ prior, negatives: [none], positives: [] });
    expect(1 - Math.exp(logEvidence)).toBeCloseTo(fever, 12);
    // As a present finding the leak of 0 is raised to its floor, 1e-6.
    const shown = posterior({ prior, negatives: [], positives: [bit(0, links)] });
    expect(Math.exp(shown.logEvidence)).toBeCloseTo(fever, 5);
  });

  /*
   * Source: our own extension with priors .1, .05, .001, worked by full enumeration apart from this code
   * (closed form: P(no effect) = (1 - leak) * product of 1 - p (1 - q)).
   */
  const prior = Float64Array.of(0.1, 0.05, 0.001);
  it("P(fever) and posteriors with leak .01", () => {
    const result = posterior({ prior, negatives: [], positives: [bit(0.01, links)] });
    expect(Math.exp(result.logEvidence)).toBeCloseTo(0.08843715, 8);
    expect(result.marginals[COLD]).toBeCloseTo(0.48653, 6);
    expect(result.marginals[FLU]).toBeCloseTo(0.458004, 6);
    expect(result.marginals[MALARIA]).toBeCloseTo(0.010276, 6);
  });

  it("P(fever) and posteriors without a leak, which the floor of 1e-6 moves by less than 1e-5", () => {
    const result = posterior({ prior, negatives: [], positives: [bit(0, links)] });
    expect(Math.abs(Math.exp(result.logEvidence) - 0.07922944)).toBeLessThan(1e-5);
    expect(Math.abs(result.marginals[COLD]! - 0.535809)).toBeLessThan(1e-5);
    expect(Math.abs(result.marginals[FLU]! - 0.510021)).toBeLessThan(1e-5);
    expect(Math.abs(result.marginals[MALARIA]! - 0.011458)).toBeLessThan(1e-5);
  });
});

/*
 * Source: Heckerman 1989 (Quickscore) for the identity, from memory; the numbers are our own, worked by full
 * enumeration and by the identity apart from this code, which agreed to 12 digits.
 */
describe("a two-layer network of four suspects and four findings", () => {
  const findings = [
    bit(0.001, { 0: 0.8, 1: 0.3 }),
    bit(0.01, { 1: 0.6, 2: 0.5, 3: 0.1 }),
    bit(0.005, { 0: 0.4, 2: 0.9, 3: 0.2 }),
    bit(0.02, { 0: 0.7, 1: 0.2, 3: 0.3 }),
  ];
  const model: Evidence = {
    prior: Float64Array.of(0.02, 0.05, 0.01, 0.1),
    positives: findings.slice(0, 3),
    negatives: findings.slice(3).map(absent),
  };
  const wanted = [0.31922165, 0.81689623, 0.32832878, 0.41864162];

  it("gives P(first three present, fourth absent) and the four posteriors", () => {
    const { logEvidence, marginals } = posterior(model);
    expect(Math.exp(logEvidence)).toBeCloseTo(0.000327412978, 12);
    wanted.forEach((p, i) => expect(marginals[i]).toBeCloseTo(p, 8));
  });

  it("agrees with Quickscore, and so does the oracle with the worked numbers", () => {
    const { evidence, marginals } = quickscore(model);
    expect(evidence).toBeCloseTo(0.000327412978, 12);
    wanted.forEach((p, i) => expect(marginals[i]).toBeCloseTo(p, 8));
    posterior(model).marginals.forEach((p, i) => expect(p).toBeCloseTo(marginals[i]!, 12));
  });
});
