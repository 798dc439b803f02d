import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Evidence, explain, type PositiveBit, posterior, run } from "../../lib/engine/core/index.ts";
import { expectSame } from "../support/expect-same.ts";
import { pick, seededUniform, smallModel } from "../support/random-models.ts";

/* Laws that follow from the definition of a noisy-OR network and from the axioms of probability. */

const shape = {
  suspects: [2, 9],
  positives: [1, 7],
  negatives: [0, 6],
  parents: [1, 5],
  soft: 0.2,
} as const;
const models = fc.integer({ min: 1, max: 1e6 }).map((seed) => ({ seed, model: smallModel(seed, shape) }));
const settings = { seed: 20_261, numRuns: 300 };

describe("laws of weighing", () => {
  it("does not depend on the order of findings or of parents, and leaves its input alone", () => {
    fc.assert(
      fc.property(models, ({ seed, model }) => {
        const before = JSON.stringify(model);
        const uniform = seededUniform(seed);
        const shuffled = <T>(list: readonly T[]): T[] =>
          Array.from(pick(uniform, list.length, list.length), (at) => list[at]!);
        const other: Evidence = {
          prior: model.prior,
          negatives: shuffled(model.negatives),
          positives: shuffled(model.positives).map((bit): PositiveBit => {
            const order = pick(uniform, bit.parents.length, bit.parents.length);
            return {
              ...bit,
              parents: order.map((at) => bit.parents[at]!),
              w: Float64Array.from(order, (at) => bit.w[at]!),
            };
          }),
        };
        const a = posterior(model);
        const b = posterior(other);
        expectSame(a.marginals, b.marginals);
        expectSame([a.logEvidence], [b.logEvidence], 1e-10);
        expect(JSON.stringify(model)).toBe(before);
        expect([...posterior(model).marginals]).toEqual([...a.marginals]);
      }),
      settings,
    );
  });

  it("is symmetric: P(i) P(j | i) = P(j) P(i | j)", () => {
    fc.assert(
      fc.property(models, ({ model }) => {
        const result = run(model);
        const rows = Array.from(model.prior, (_, i) => result.condition(i));
        rows.forEach((row, i) => {
          row.forEach((p, j) => {
            expectSame([result.marginals[i]! * p], [result.marginals[j]! * rows[j]![i]!]);
          });
        });
      }),
      settings,
    );
  });

  it("conditioning equals weighing with that suspect's prior set to 1", () => {
    fc.assert(
      fc.property(models, ({ seed, model }) => {
        const i = seed % model.prior.length;
        const prior = model.prior.slice();
        prior[i] = 1;
        expectSame(run(model).condition(i), posterior({ ...model, prior }).marginals);
      }),
      settings,
    );
  });

  it("P(E and finding present) + P(E and finding absent) = P(E)", () => {
    fc.assert(
      fc.property(models, ({ model }) => {
        const { soft, ...first } = model.positives[0]!;
        const rest = model.positives.slice(1);
        const silent = { leakQ: 1 - first.leak, parents: first.parents, q: first.w.map((w) => 1 - w) };
        const present = posterior({ ...model, positives: [first, ...rest] });
        const missing = posterior({ ...model, negatives: [...model.negatives, silent], positives: rest });
        const either = posterior({ ...model, positives: rest });
        const sum = Math.exp(present.logEvidence) + Math.exp(missing.logEvidence);
        expectSame([sum / Math.exp(either.logEvidence)], [1], 1e-11);
        expect(soft === undefined || soft.length === 2).toBe(true);
      }),
      settings,
    );
  });

  it("a soft answer of (0, 1) is a hard one, equal weights are no evidence, (1, 0) is an absent finding", () => {
    fc.assert(
      fc.property(models, ({ model }) => {
        const hard = model.positives.map(({ soft: _, ...bit }) => bit);
        const as = (soft: readonly [number, number]): Evidence => ({
          ...model,
          positives: hard.map((bit) => ({ ...bit, soft })),
        });
        expectSame(posterior(as([0, 1])).marginals, posterior({ ...model, positives: hard }).marginals);
        expectSame(posterior(as([0.3, 0.3])).marginals, posterior({ ...model, positives: [] }).marginals);
        const negatives = hard.map((bit) => ({
          leakQ: 1 - bit.leak,
          parents: bit.parents,
          q: bit.w.map((w) => 1 - w),
        }));
        const absent = { ...model, negatives: [...model.negatives, ...negatives], positives: [] };
        expectSame(posterior(as([1, 0])).marginals, posterior(absent).marginals);
      }),
      settings,
    );
  });

  it("another cause that is sure explains a finding away: P(i | finding, j) <= P(i | finding)", () => {
    fc.assert(
      fc.property(models, ({ model }) => {
        const { soft: _, ...bit } = model.positives[0]!;
        if (bit.parents.length < 2) return;
        const result = run({ ...model, positives: [bit] });
        const [i, j] = bit.parents;
        expect(result.condition(j!)[i!]!).toBeLessThanOrEqual(result.marginals[i!]! + 1e-12);
      }),
      settings,
    );
  });
});

describe("laws of explaining", () => {
  it("the share outside the knowledge, singles, pairs and residual sum to 1; involved is at least the sets listed", () => {
    fc.assert(
      fc.property(models, ({ model }) => {
        const result = explain(model, [0]);
        const listed = result.none + result.singles.reduce((sum, p) => sum + p, 0);
        const pairs = result.pairs.reduce((sum, { probability }) => sum + probability, 0);
        expectSame([listed + pairs + result.residual], [1], 1e-11);
        result.involved.forEach((p, i) => {
          const own = result.pairs.filter((pair) => pair.i === i || pair.j === i);
          const sets = result.singles[i]! + own.reduce((sum, { probability }) => sum + probability, 0);
          expect(p).toBeGreaterThanOrEqual(sets - 1e-11);
          expect(p).toBeLessThanOrEqual(result.marginals[i]! + 1e-11);
        });
      }),
      settings,
    );
  });

  it("components sum to 1 and mix to the marginals", () => {
    fc.assert(
      fc.property(models, ({ model }) => {
        const result = explain(model, [0]);
        for (const limit of [1, 4, 12]) {
          const components = result.components(limit);
          const sets = components.filter(({ kind }) => kind === "set");
          expect(sets.length).toBeLessThanOrEqual(limit);
          expectSame([components.reduce((sum, { probability }) => sum + probability, 0)], [1], 1e-11);
          const mixed = Array.from(model.prior, (_, i) =>
            components.reduce((sum, { probability, marginals }) => sum + probability * marginals[i]!, 0),
          );
          expectSame(mixed, result.marginals, 1e-10);
        }
      }),
      settings,
    );
  });

  it("one target by difference equals the same target by its own run", () => {
    fc.assert(
      fc.property(models, ({ model }) => {
        const { soft: _, ...first } = model.positives[0]!;
        const rest = model.positives.slice(1);
        const hard = explain({ ...model, positives: [first, ...rest] }, [0]);
        // Halving both weights changes P(E) only, and takes the general way.
        const direct = explain({ ...model, positives: [{ ...first, soft: [0, 0.5] }, ...rest] }, [0]);
        expectSame(hard.marginals, direct.marginals, 1e-11);
        expectSame(hard.involved, direct.involved, 1e-11);
        expectSame(hard.singles, direct.singles, 1e-11);
        expectSame([hard.none, hard.logEvidence + Math.log(0.5)], [direct.none, direct.logEvidence], 1e-10);
      }),
      settings,
    );
  });
});
