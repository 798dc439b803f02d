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
  decisivelySeen: ReadonlySet<number>,
  marginals: Float64Array,
): Set<string> {
  return new Set(
    grounded.suspects
      .filter((s) => decisivelySeen.has(s.index) && (marginals[s.index] ?? 0) >= LIKELY_ENOUGH)
      .map((s) => s.id),
  );
}

/** Indices of the suspects of which a decisive finding was seen by hand at their place, in the grade that decides. */
export function decisivelySeenSuspects(grounded: Grounded, assembled: Assembled): Set<number> {
  const checked = assembled.gathered.observations.filter((a) => a.by === "check" && a.place !== undefined);
  const seen = new Set<number>();
  if (checked.length === 0) return seen;
  for (const suspect of grounded.suspects) {
    const decisive = grounded.faults.get(suspect.fault)?.decisive ?? [];
    const shown = checked.some(
      (answer) =>
        answer.place !== undefined &&
        grounded.places.overlap(answer.place, suspect.place) &&
        decisive.some((d) => d.observation === answer.observation.id && answer.grade.from >= d.level),
    );
    if (shown) seen.add(suspect.index);
  }
  return seen;
}
