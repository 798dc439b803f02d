import fc from "fast-check";
import { expect, test } from "vitest";
import { exportCase, importCase } from "../../lib/case/index.ts";
import { CornerwiseError } from "../../lib/errors.ts";
import { readCourse, readExercise } from "../../lib/training/index.ts";
import { anyEntries } from "../support/entry-arbitraries.ts";

/* Files from outside, spoilt at random: each is taken in whole or refused in words, and nothing else happens. */

const RUNS = { seed: 20261128, numRuns: 10_000 };

/** Text of a case file with a stretch left out, doubled or written over. */
const cutCaseFiles = fc
  .tuple(
    anyEntries.filter((entries) => entries.length > 0),
    fc.nat(),
    fc.nat(200),
    fc.constantFrom(
      "",
      "{",
      "]",
      '"',
      "null",
      "1e999",
      '"__proto__":',
      "\u0000",
      "\ud800",
      "[[[[[[[[[[[[[[[[[[",
    ),
  )
  .map(([entries, from, length, instead]) => {
    const [first] = entries;
    const text = exportCase(entries.filter((entry) => entry.caseId === first?.caseId));
    const at = from % text.length;
    return text.slice(0, at) + instead + text.slice(at + length);
  });

/** A case file whose parts are any JSON. */
const oddCaseFiles = fc
  .record(
    {
      format: fc.constantFrom("cornerwise-case", "cornerwise-exercise", 1, null),
      schemaVersion: fc.constantFrom(1, 2, "1", -1),
      caseId: fc.oneof(fc.constant("c1"), fc.jsonValue()),
      entries: fc.oneof(fc.array(fc.jsonValue(), { maxLength: 4 }), fc.jsonValue()),
    },
    { requiredKeys: [] },
  )
  .map((file) => JSON.stringify(file));

const spoilt = fc.oneof(cutCaseFiles, oddCaseFiles, fc.json(), fc.string({ unit: "binary" }));

test("a spoilt file is taken in whole or refused with what, where and how", () => {
  let taken = 0;
  let refused = 0;
  fc.assert(
    fc.property(spoilt, (text) => {
      for (const read of [importCase, readExercise, readCourse]) {
        try {
          const file = read(text);
          if ("caseId" in file) expect(importCase(exportCase(file.entries))).toEqual(file);
          taken += 1;
        } catch (error) {
          expect(error).toBeInstanceOf(CornerwiseError);
          expect((error as CornerwiseError).message.length).toBeGreaterThan(10);
          refused += 1;
        }
      }
    }),
    RUNS,
  );
  // Both kinds came: otherwise the test would say little.
  expect(taken).toBeGreaterThan(0);
  expect(refused).toBeGreaterThan(1000);
  expect(Object.keys(Object.prototype)).toEqual([]);
});
