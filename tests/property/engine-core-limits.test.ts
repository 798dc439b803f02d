import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type Evidence,
  explain,
  LEAK_CEILING,
  LEAK_FLOOR,
  type PositiveBit,
  posterior,
  run,
  STRENGTH_CEILING,
} from "../../lib/engine/core/index.ts";
import { bruteForce, enumerateFirings } from "../support/brute-force.ts";
import { expectSame } from "../support/expect-same.ts";
import { quickscore } from "../support/quickscore.ts";
import { answered, between, largeModel, pick, seededUniform, smallModel } from "../support/random-models.ts";

/* What happens at the limits: many findings, too much cost, rare targets, extreme numbers, bad input. */

const shape = {
  suspects: [2, 9],
  positives: [1, 7],
  negatives: [0, 6],
  parents: [1, 5],
  soft: 0.2,
} as const;
const models = fc.integer({ min: 1, max: 1e6 }).map((seed) => ({ seed, model: smallModel(seed, shape) }));
const settings = { seed: 20_261, numRuns: 300 };

/** 14 suspects, each finding with parents from all over: no order of them keeps the plan narrow. */
function tangled(seed: number, count: number, parents: number): Evidence {
  const uniform = seededUniform(seed);
  const positives = Array.from({ length: count }, (): PositiveBit => {
    const own = pick(uniform, 14, parents).toSorted();
    return {
      leak: 0.01 + 0.1 * uniform(),
      parents: own,
      w: Float64Array.from(own, () => 0.05 + 0.6 * uniform()),
    };
  });
  return { prior: Float64Array.from({ length: 14 }, () => 0.02 + 0.3 * uniform()), negatives: [], positives };
}

/** How many suspects hang together with one through findings. */
function reachedFrom(first: number, positives: readonly PositiveBit[]): number {
  const reached = new Set([first]);
  for (let before = 0; before < reached.size; ) {
    before = reached.size;
    for (const { parents } of positives) {
      if (parents.some((i) => reached.has(i))) for (const i of parents) reached.add(i);
    }
  }
  return reached.size;
}

describe("size", () => {
  it.each([31, 32, 33, 64, 70])(
    "%i present findings on a chain of 15 suspects agree with enumeration",
    (count) => {
      const uniform = seededUniform(count);
      // Neighbours share findings, as at the corners of a car; so the plan stays narrow.
      const positives = Array.from({ length: count }, (_, k): PositiveBit => {
        const parents = Int32Array.of(Math.floor((14 * k) / count), Math.floor((14 * k) / count) + 1);
        return {
          leak: 0.01 + 0.1 * uniform(),
          parents,
          w: Float64Array.from(parents, () => 0.05 + 0.4 * uniform()),
        };
      });
      const model = { ...smallModel(count, { ...shape, suspects: [15, 15] }), positives };
      const oracle = bruteForce(model);
      const result = posterior(model);
      expect(result.approximate).toBe(false);
      expectSame(result.marginals, oracle.marginals, 1e-11);
      expectSame([result.logEvidence], [Math.log(oracle.evidence)], 1e-10);
    },
  );

  it("20 present findings that all hang together agree with enumeration", () => {
    for (let seed = 1; seed <= 4; seed++) {
      const model = tangled(seed, 20, 3);
      expect(reachedFrom(0, model.positives)).toBe(model.prior.length);
      const oracle = bruteForce(model);
      const result = posterior(model);
      expect(result.approximate).toBe(false);
      expectSame(result.marginals, oracle.marginals, 1e-11);
      expectSame([result.logEvidence], [Math.log(oracle.evidence)], 1e-10);
    }
  });

  it("34 present findings that all hang together are cut and flagged: P(E) is a lower bound of that by enumeration", () => {
    for (let seed = 1; seed <= 4; seed++) {
      const model = tangled(seed, 34, 4);
      const oracle = bruteForce(model);
      const result = posterior(model);
      expect(result.approximate).toBe(true);
      expect(result.logEvidence).toBeLessThanOrEqual(Math.log(oracle.evidence) + 1e-9);
      // Without locality they may be far off, which is why the flag is set; marginal-bounds.test.ts has what is proven.
      expect(result.marginals.every((p) => p >= 0 && p <= 1)).toBe(true);
    }
  });

  it("64 present findings without any locality are cut, not refused", () => {
    const model = smallModel(64, {
      ...shape,
      suspects: [10, 10],
      positives: [64, 64],
      parents: [2, 4],
      soft: 0,
    });
    const oracle = bruteForce(model);
    for (const maxCost of [undefined, Number.POSITIVE_INFINITY]) {
      const result = posterior(model, maxCost === undefined ? {} : { maxCost });
      expect(result.approximate).toBe(true);
      expect(result.logEvidence).toBeLessThanOrEqual(Math.log(oracle.evidence));
      expect(result.marginals.every((p) => p >= 0 && p <= 1)).toBe(true);
    }
  });

  it("two hundred present findings do not underflow", () => {
    // 200 findings with nothing but a leak of 1e-3: P(E) = 1e-600, below the smallest double.
    const lone: PositiveBit = { leak: 1e-3, parents: Int32Array.of(), w: Float64Array.of() };
    const pair: PositiveBit = { leak: 1e-3, parents: Int32Array.of(0, 1), w: Float64Array.of(1e-9, 1e-9) };
    const lonely = posterior({
      prior: Float64Array.of(0.5, 0.5),
      negatives: [],
      positives: new Array<PositiveBit>(200).fill(lone),
    });
    expectSame([lonely.logEvidence], [200 * Math.log(1e-3)], 1e-9);
    const paired = posterior({
      prior: Float64Array.of(0.5, 0.5),
      negatives: [],
      positives: new Array<PositiveBit>(20).fill(pair),
    });
    expectSame([paired.logEvidence], [20 * Math.log(1e-3)], 1e-4);
  });

  it("150 suspects and 7 present findings agree with Quickscore (Heckerman 1989) within its rounding", () => {
    for (let seed = 1; seed <= 12; seed++) {
      const { evidence } = answered(largeModel(seed, 7), seed, 7, 25);
      const oracle = quickscore(evidence);
      const result = posterior(evidence);
      // The oracle must be able to tell: its rounding stays far below what a wrong term would make.
      expect(oracle.rounding).toBeLessThan(1e-5);
      const tolerance = Math.max(1e-10, oracle.rounding);
      expectSame(result.marginals, oracle.marginals, tolerance);
      expectSame([result.logEvidence], [Math.log(oracle.evidence)], tolerance);
    }
  });

  it("stays cheap on local knowledge: plan cost, not milliseconds", () => {
    // Budgets from our own measurements with room to spare; no outside source.
    for (let seed = 1; seed <= 20; seed++) {
      const { evidence } = answered(largeModel(seed, 12), seed, 12, 20);
      expect(posterior(evidence).planCost).toBeLessThan(200_000);
    }
  });
});

describe("cutting links", () => {
  it("flags it, keeps the cost, gives a lower bound of P(E), and stays near the exact marginals", () => {
    let cutRuns = 0;
    let total = 0;
    let count = 0;
    for (let seed = 1; seed <= 60; seed++) {
      const { evidence } = answered(largeModel(seed, 14), seed, 14, 15);
      const exact = posterior(evidence, { maxCost: Number.POSITIVE_INFINITY });
      const maxCost = Math.max(500, exact.planCost / 4);
      const cut = posterior(evidence, { maxCost });
      if (exact.planCost <= maxCost) continue;
      cutRuns++;
      expect(exact.approximate).toBe(false);
      expect(cut.approximate).toBe(true);
      expect(cut.cuts).toBeGreaterThan(0);
      expect(cut.planCost).toBeLessThanOrEqual(maxCost);
      expect(cut.logEvidence).toBeLessThanOrEqual(exact.logEvidence + 1e-9);
      cut.marginals.forEach((p, i) => {
        expect(p >= 0 && p <= 1).toBe(true);
        total += Math.abs(p - exact.marginals[i]!);
        count++;
      });
    }
    expect(cutRuns).toBeGreaterThan(30);
    expect(total / count).toBeLessThan(0.01);
  });

  it("with no cost allowed, cut links become leaks of their own until the findings are independent", () => {
    fc.assert(
      fc.property(models, ({ model }) => {
        const { logEvidence: logNegative, marginals: alpha } = posterior({ ...model, positives: [] });
        let wanted = logNegative;
        for (const { leak, parents, w, soft } of model.positives) {
          let absent = 1 - leak;
          parents.forEach((i, p) => {
            absent *= 1 - alpha[i]! * w[p]!;
          });
          const [ifAbsent, ifPresent] = soft ?? [0, 1];
          wanted += Math.log(ifAbsent * absent + ifPresent * (1 - absent));
        }
        const result = posterior(model, { maxCost: 0 });
        expectSame([result.logEvidence], [wanted], 1e-10);
        expect(result.planCost).toBe(0);
      }),
      settings,
    );
  });

  it("explains with a consistent whole and a lower bound, for one target and for two", () => {
    for (let seed = 1; seed <= 30; seed++) {
      const { evidence } = answered(largeModel(seed, 12), seed, 12, 15);
      for (const targets of [[0], [0, 5]]) {
        const exact = explain(evidence, targets, { maxCost: Number.POSITIVE_INFINITY });
        const cut = explain(evidence, targets, { maxCost: 300 });
        expect(cut.logEvidence).toBeLessThanOrEqual(exact.logEvidence + 1e-9);
        const singles = cut.singles.reduce((sum, p) => sum + p, 0);
        expect(cut.none + singles).toBeLessThanOrEqual(1 + 1e-9);
        cut.involved.forEach((p, i) => expect(p).toBeGreaterThanOrEqual(cut.singles[i]! - 1e-9));
      }
    }
  });
});

describe("digits", () => {
  it("hold for a rare target: leak, priors and strengths down to 1e-6", () => {
    for (let seed = 1; seed <= 200; seed++) {
      const uniform = seededUniform(seed);
      const rare = (): number => 10 ** (-6 * uniform());
      const bit = (): PositiveBit => {
        const parents = pick(uniform, 4, 3);
        return {
          leak: Math.max(1e-6, 0.3 * rare()),
          parents,
          w: Float64Array.from(parents, () => 0.9 * rare()),
        };
      };
      const model: Evidence = {
        prior: Float64Array.from({ length: 4 }, () => 0.5 * rare()),
        negatives: [],
        positives: [bit(), bit(), bit()],
      };
      const oracle = enumerateFirings(model, [0]);
      const result = explain(model, [0]);
      expectSame([result.logEvidence], [Math.log(oracle.evidence)], 1e-11);
      expectSame(
        result.singles,
        Array.from(result.singles, (_, i) => oracle.explaining.get(1 << i) ?? 0),
        2e-12,
      );
      expectSame(result.marginals, bruteForce(model).marginals, 2e-12);
    }
  });
});

describe("extremes", () => {
  it("give what enumeration gives or say that the evidence is impossible, never NaN", () => {
    let impossible = 0;
    for (let seed = 1; seed <= 1_000; seed++) {
      const uniform = seededUniform(seed + 7_000);
      const extreme = (): number => [0, 1, 1e-12, 1 - 1e-9, 0.5, uniform()][between(uniform, [0, 5])]!;
      const n = between(uniform, [1, 5]);
      const parents = (): Int32Array => pick(uniform, n, between(uniform, [0, n]));
      const negatives = Array.from({ length: between(uniform, [0, 2]) }, () => {
        const own = parents();
        return {
          leakQ: uniform() < 0.1 ? 0 : 1 - 0.5 * extreme(),
          parents: own,
          q: Float64Array.from(own, extreme),
        };
      });
      const positives = Array.from({ length: between(uniform, [0, 4]) }, (): PositiveBit => {
        const own = parents();
        const bit = { leak: extreme(), parents: own, w: Float64Array.from(own, extreme) };
        return uniform() < 0.3 ? { ...bit, soft: [extreme(), extreme()] } : bit;
      });
      const model: Evidence = { prior: Float64Array.from({ length: n }, extreme), negatives, positives };
      const oracle = bruteForce({
        ...model,
        positives: positives.map((bit) => ({
          ...bit,
          leak: Math.min(LEAK_CEILING, Math.max(LEAK_FLOOR, bit.leak)),
          w: bit.w.map((w) => Math.min(STRENGTH_CEILING, w)),
        })),
      });
      if (oracle.evidence === 0) {
        impossible++;
        expect(() => posterior(model)).toThrow(expect.objectContaining({ code: "impossible-evidence" }));
        continue;
      }
      const result = posterior(model);
      expectSame(result.marginals, oracle.marginals, 1e-9);
      expectSame([result.logEvidence], [Math.log(oracle.evidence)], 1e-9);
      if (positives.length === 0) continue;
      const explanation = explain(model, [0]);
      const numbers = [
        explanation.none,
        explanation.residual,
        ...explanation.singles,
        ...explanation.involved,
        ...explanation.marginals,
        ...explanation.components(12).flatMap(({ probability, marginals }) => [probability, ...marginals]),
      ];
      expect(
        numbers.every((p) => p >= 0 && p <= 1 + 1e-12),
        `seed ${seed}`,
      ).toBe(true);
    }
    expect(impossible).toBeGreaterThan(20);
    expect(impossible).toBeLessThan(700);
  });
});

describe("what cannot be weighed", () => {
  const bit: PositiveBit = { leak: 0.1, parents: Int32Array.of(0), w: Float64Array.of(0.5) };
  const model: Evidence = { prior: Float64Array.of(0.2), negatives: [], positives: [bit] };
  const cases: readonly [string, string, () => unknown][] = [
    [
      "no suspect",
      "empty-model",
      () => posterior({ prior: Float64Array.of(), negatives: [], positives: [] }),
    ],
    [
      "a prior of 1.5",
      "probability-out-of-range",
      () => posterior({ ...model, prior: Float64Array.of(1.5) }),
    ],
    [
      "a prior of NaN",
      "probability-out-of-range",
      () => posterior({ ...model, prior: Float64Array.of(Number.NaN) }),
    ],
    [
      "a negative leak",
      "probability-out-of-range",
      () => posterior({ ...model, positives: [{ ...bit, leak: -0.1 }] }),
    ],
    [
      "a strength above 1",
      "probability-out-of-range",
      () => posterior({ ...model, positives: [{ ...bit, w: Float64Array.of(2) }] }),
    ],
    [
      "a soft weight above 1",
      "probability-out-of-range",
      () => posterior({ ...model, positives: [{ ...bit, soft: [0, 3] }] }),
    ],
    [
      "a parent that does not exist",
      "bad-request",
      () => posterior({ ...model, positives: [{ ...bit, parents: Int32Array.of(1) }] }),
    ],
    [
      "a parent named twice",
      "bad-request",
      () =>
        posterior({
          ...model,
          positives: [{ ...bit, parents: Int32Array.of(0, 0), w: Float64Array.of(0.5, 0.5) }],
        }),
    ],
    [
      "more parents than strengths",
      "bad-request",
      () => posterior({ ...model, positives: [{ ...bit, parents: Int32Array.of(0, 0) }] }),
    ],
    [
      "a finding that cannot be absent",
      "impossible-evidence",
      () =>
        posterior({ ...model, negatives: [{ leakQ: 0, parents: Int32Array.of(), q: Float64Array.of() }] }),
    ],
    [
      "a sure suspect that must show an absent finding",
      "impossible-evidence",
      () =>
        posterior({
          prior: Float64Array.of(1),
          positives: [],
          negatives: [{ leakQ: 1, parents: Int32Array.of(0), q: Float64Array.of(0) }],
        }),
    ],
    [
      "an answer that never comes",
      "impossible-evidence",
      () => posterior({ ...model, positives: [{ ...bit, soft: [0, 0] }] }),
    ],
    [
      "conditioning on a suspect that is ruled out",
      "impossible-evidence",
      () => run({ ...model, prior: Float64Array.of(0) }).condition(0),
    ],
    ["conditioning on a suspect that does not exist", "impossible-evidence", () => run(model).condition(7)],
    ["no target", "bad-request", () => explain(model, [])],
    ["a target that does not exist", "bad-request", () => explain(model, [1])],
    ["a target twice", "bad-request", () => explain(model, [0, 0])],
  ];
  it.each(cases)("%s", (_, code, act) => {
    expect(act).toThrow(expect.objectContaining({ name: "CornerwiseError", code }));
  });

  it("raises a leak of 0 to its floor and lowers a sure link to its ceiling", () => {
    const extreme: Evidence = { ...model, positives: [{ ...bit, leak: 0, w: Float64Array.of(1) }] };
    const written: Evidence = {
      ...model,
      positives: [{ ...bit, leak: LEAK_FLOOR, w: Float64Array.of(STRENGTH_CEILING) }],
    };
    expect(posterior(extreme)).toEqual(posterior(written));
    const orphan: Evidence = {
      ...model,
      positives: [{ leak: 0, parents: Int32Array.of(), w: Float64Array.of() }],
    };
    expectSame([posterior(orphan).logEvidence], [Math.log(LEAK_FLOOR)], 1e-9);
  });
});
