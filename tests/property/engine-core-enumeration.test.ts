import { describe, expect, it } from "vitest";
import { explain, posterior, run } from "../../lib/engine/core/index.ts";
import { bruteForce, conditional, enumerateFirings } from "../support/brute-force.ts";
import { type SmallModelShape, smallModel } from "../support/random-models.ts";

/*
 * Oracle: plain enumeration over every set of suspects (and every firing of the targets' links), which follows
 * from the definition of a noisy-OR network and shares no code with the core.
 */
const MODELS = 1_000;
const TOLERANCE = 1e-12;
const shape: SmallModelShape = {
  suspects: [1, 9],
  positives: [0, 7],
  negatives: [0, 6],
  parents: [0, 5],
  soft: 0.2,
};

function worst(pairs: Iterable<readonly [number, number]>): number {
  let error = 0;
  // Math.max keeps NaN, so that a NaN fails the check.
  for (const [got, wanted] of pairs) error = Math.max(error, Math.abs(got - wanted));
  return error;
}

describe("the core against enumeration over sets of suspects", () => {
  it("gives P(E) and every marginal", () => {
    for (let seed = 1; seed <= MODELS; seed++) {
      const model = smallModel(seed, shape);
      const oracle = bruteForce(model);
      const result = posterior(model);
      expect(Math.abs(result.logEvidence - Math.log(oracle.evidence)), `seed ${seed}`).toBeLessThan(
        TOLERANCE * 10,
      );
      const error = worst(oracle.marginals.map((m, i) => [result.marginals[i]!, m] as const));
      expect(error, `seed ${seed}`).toBeLessThan(TOLERANCE);
    }
  });

  it("gives every marginal given that one suspect is present", () => {
    for (let seed = 1; seed <= MODELS; seed++) {
      const model = smallModel(seed, shape);
      const oracle = bruteForce(model);
      const result = run(model);
      const n = model.prior.length;
      const has = (set: number, i: number): boolean => ((set >> i) & 1) === 1;
      for (let i = 0; i < n; i++) {
        const row = result.condition(i);
        const error = worst(
          Array.from(row, (got, j) => {
            const both = conditional(oracle.joint, (set) => has(set, i) && has(set, j));
            return [got, both / oracle.marginals[i]!] as const;
          }),
        );
        expect(error, `seed ${seed}, suspect ${i}`).toBeLessThan(TOLERANCE);
      }
    }
  });
});

describe("the core against enumeration over firings", () => {
  const tiny: SmallModelShape = { ...shape, suspects: [1, 5], positives: [1, 5], parents: [0, 4] };

  it("gives who fired: each link, each leak, and any of several targets", () => {
    for (let seed = 1; seed <= MODELS; seed++) {
      const model = smallModel(seed, tiny);
      const targets = model.positives.map((_, k) => k).slice(0, 1 + (seed % 2));
      const oracle = enumerateFirings(model, targets);
      const result = run(model);
      targets.forEach((k, t) => {
        const { links, leak } = result.linkFired(k);
        const error = worst([
          [leak, oracle.leaks[t]!],
          ...Array.from(links, (p, at) => {
            const parent = model.positives[k]!.parents[at]!;
            return [p, oracle.links[t]!.get(parent) ?? 0] as const;
          }),
        ]);
        expect(error, `seed ${seed}`).toBeLessThan(TOLERANCE);
      });
      const any = result.anyFired(targets);
      const error = worst(Array.from(any, (p, i) => [p, involvedIn(oracle.explaining, i)] as const));
      expect(error, `seed ${seed}`).toBeLessThan(TOLERANCE);
    }
  });

  it("gives the explaining sets of one or two targets, the share outside the knowledge, and the residual", () => {
    for (let seed = 1; seed <= MODELS; seed++) {
      const model = smallModel(seed, tiny);
      const targets = model.positives.map((_, k) => k).slice(0, 1 + (seed % 2));
      const oracle = enumerateFirings(model, targets);
      const result = explain(model, targets);
      const label = `seed ${seed}`;
      expect(Math.abs(result.logEvidence - Math.log(oracle.evidence)), label).toBeLessThan(TOLERANCE * 10);
      const tolerance = TOLERANCE * 10;
      expect(Math.abs(result.none - (oracle.explaining.get(0) ?? 0)), label).toBeLessThan(tolerance);
      const marginals = bruteForce(model).marginals;
      const error = worst([
        ...Array.from(result.singles, (p, i) => [p, oracle.explaining.get(1 << i) ?? 0] as const),
        ...Array.from(result.involved, (p, i) => [p, involvedIn(oracle.explaining, i)] as const),
        ...Array.from(result.marginals, (p, i) => [p, marginals[i]!] as const),
        ...result.pairs.map(
          ({ i, j, probability }) => [probability, oracle.explaining.get((1 << i) | (1 << j)) ?? 0] as const,
        ),
      ]);
      expect(error, label).toBeLessThan(tolerance);
      const listed = new Set([0, ...Array.from(result.singles, (_, i) => 1 << i)]);
      for (const { i, j } of result.pairs) listed.add((1 << i) | (1 << j));
      let left = 0;
      let likeliestLeft = 0;
      for (const [set, p] of oracle.explaining) {
        if (listed.has(set)) continue;
        left += p;
        likeliestLeft = Math.max(likeliestLeft, p);
      }
      expect(Math.abs(result.residual - left), label).toBeLessThan(tolerance);
      expect(likeliestLeft, label).toBeLessThanOrEqual(result.residual + tolerance);
    }
  });
});

function involvedIn(explaining: Map<number, number>, i: number): number {
  let sum = 0;
  for (const [set, p] of explaining) if ((set >> i) & 1) sum += p;
  return sum;
}
