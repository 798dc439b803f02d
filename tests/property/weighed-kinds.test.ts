import fc from "fast-check";
import { expect, it } from "vitest";
import { WEIGHED_KINDS } from "../../lib/case/case-urgency.ts";
import { foldCase } from "../../lib/case/index.ts";
import { situationOf } from "../../lib/case/situation.ts";
import { anyEntries } from "../support/entry-arbitraries.ts";
import { tinyKnowledge } from "../support/tiny-knowledge.ts";

const { knowledge } = tinyKnowledge();

it("what a case gives the engine, and its release, follow from the kinds that the server reads for its urgency alone", () => {
  fc.assert(
    fc.property(anyEntries, (delivered) => {
      // As the database keeps them: one entry under an id.
      const entries = [...new Map(delivered.map((entry) => [entry.id, entry])).values()];
      const whole = foldCase(entries);
      const read = foldCase(entries.filter(({ kind }) => WEIGHED_KINDS.includes(kind)));
      expect(situationOf(knowledge, read)).toEqual(situationOf(knowledge, whole));
      expect(read.release).toBe(whole.release);
    }),
    { seed: 20261128, numRuns: 1000 },
  );
});
