import { describe, expect, it } from "vitest";
import { type Answer, groundCar, weighing } from "../../lib/engine/index.ts";
import { posterior } from "../../lib/engine/core/index.ts";
import { expectSame } from "../support/expect-same.ts";
import { pick, seededUniform } from "../support/random-models.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";

/* More findings than any car has at once, on the shipped knowledge. */

const knowledge = shippedKnowledge();
const grounded = groundCar(knowledge, {
  drive: "front",
  front: { layout: "strut" },
  odometerKm: 140_000,
});

/** The first two complaints, and observations seen by hand at places anywhere or around one corner. */
function manyPresent(count: number, corner: boolean, seed: number): Answer[] {
  const uniform = seededUniform(seed);
  const nodes = [...grounded.nodes.keys()].filter((id) => !corner || /@front(-left)?$/.test(id));
  const told = knowledge.complaints
    .slice(0, 2)
    .map(({ id }): Answer => ({ finding: id, state: "present", by: "report" }));
  const seen = Array.from(
    pick(uniform, nodes.length, count - told.length),
    (k): Answer => ({ finding: nodes[k] ?? "", state: "present", by: "check" }),
  );
  return [...told, ...seen];
}

describe("present findings on the shipped knowledge", () => {
  it.each([
    [20, true],
    [20, false],
    [32, true],
    [45, false],
  ])("%i are weighed exactly, all around one corner: %s", (count, corner) => {
    for (let seed = 1; seed <= 5; seed++) {
      const { weighed, assembled } = weighing(grounded, manyPresent(count, corner, seed));
      expect(assembled.evidence.positives.length).toBeGreaterThanOrEqual(count);
      expect(weighed.approximate).toBe(false);
      // No outside source reaches this size; another budget lays the work out anew and must give the same.
      const free = posterior(assembled.evidence, { maxCost: Number.POSITIVE_INFINITY });
      const present = new Float64Array(grounded.suspects.length);
      for (const r of weighed.ranking) present[r.suspect.index] = r.present;
      expectSame(present, free.marginals, 1e-9);
      expectSame([weighed.logEvidence], [free.logEvidence], 1e-9);
    }
  });
});
