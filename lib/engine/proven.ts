import type { Assembled } from "./assemble.ts";
import type { Grounded } from "./ground.ts";
import type { Suspect } from "./suspect.ts";

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
  const seen = new Set<number>();
  for (const { by, place, observation, grade } of assembled.gathered.observations) {
    if (by !== "check" || place === undefined || grade.from < 0) continue;
    for (const { suspect, level } of decidedBy(grounded).get(observation.id) ?? []) {
      if (grade.from >= level && grounded.places.overlap(place, suspect.place)) seen.add(suspect.index);
    }
  }
  return seen;
}

interface Decided {
  readonly suspect: Suspect;
  /** Lowest grade that decides. */
  readonly level: number;
}

const DECIDED = new WeakMap<Grounded, ReadonlyMap<string, readonly Decided[]>>();

/** The suspects that each observation decides. */
function decidedBy(grounded: Grounded): ReadonlyMap<string, readonly Decided[]> {
  const kept = DECIDED.get(grounded);
  if (kept !== undefined) return kept;
  const decided = new Map<string, Decided[]>();
  for (const suspect of grounded.suspects) {
    for (const { observation, level } of grounded.faults.get(suspect.fault)?.decisive ?? []) {
      const list = decided.get(observation) ?? [];
      decided.set(observation, list);
      list.push({ suspect, level });
    }
  }
  DECIDED.set(grounded, decided);
  return decided;
}
