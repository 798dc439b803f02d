import type { Assembled } from "./assemble.ts";
import type { Grounded } from "./ground.ts";

/** A decisive finding proves a suspect only when the fault is also at least this likely to be there. */
const LIKELY_ENOUGH = 0.8;

/**
 * Suspects that a decisive finding proves: seen by hand at their place, in the grade that decides, and likely.
 *
 * What was only told proves nothing.
 */
export function provenSuspects(
  grounded: Grounded,
  assembled: Assembled,
  marginals: Float64Array,
): Set<string> {
  const proven = new Set<string>();
  for (const suspect of grounded.suspects) {
    if ((marginals[suspect.index] ?? 0) < LIKELY_ENOUGH) continue;
    const decisive = grounded.faults.get(suspect.fault)?.decisive ?? [];
    const seen = assembled.gathered.observations.some(
      (answer) =>
        answer.by === "check" &&
        answer.place !== undefined &&
        grounded.places.overlap(answer.place, suspect.place) &&
        decisive.some((d) => d.observation === answer.observation.id && answer.grade.from >= d.level),
    );
    if (seen) proven.add(suspect.id);
  }
  return proven;
}
