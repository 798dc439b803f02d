import fc from "fast-check";
import type { Answer } from "../../lib/engine/index.ts";
import type { Knowledge } from "../../lib/knowledge/schema/compiled.ts";

/** Complaints, features and placed observations of a knowledge, drawn at random, each finding once. */
export function answersOf(knowledge: Knowledge, most: number): fc.Arbitrary<Answer[]> {
  const ids = [
    ...knowledge.complaints.map((c) => c.id),
    ...knowledge.features.flatMap((f) => f.complaints.map((c) => `${c}:${f.id}`)),
    ...knowledge.observations.flatMap((o) => o.places.map((p) => `${o.id}@${p}`)),
  ];
  const answer = fc.record({
    finding: fc.constantFrom(...ids),
    state: fc.constantFrom<("present" | "absent")[]>("present", "present", "absent"),
    by: fc.constantFrom<("report" | "check")[]>("report", "check"),
  });
  return fc.uniqueArray(answer, { minLength: 1, maxLength: most, selector: (a) => a.finding });
}

/** A car drawn at random: any attribute may be unknown. */
export const anyCar: fc.Arbitrary<Record<string, unknown>> = fc.record(
  {
    drive: fc.constantFrom("front", "rear", "all"),
    front: fc.record({ layout: fc.constantFrom("strut", "strut-two-links", "double-wishbone") }),
    odometerKm: fc.integer({ min: 0, max: 400_000 }),
    ageYears: fc.integer({ min: 0, max: 25 }),
    roads: fc.constantFrom("smooth", "average", "rough"),
  },
  { requiredKeys: [] },
);
