import type { CompiledComplaint } from "../../knowledge/schema/compiled.ts";
import { showingStrength } from "../complaint-bit.ts";
import type { Grounded } from "../ground.ts";

/** Chance that a car shows the complaint, before anything is known of it. */
export function complaintChance(grounded: Grounded, complaint: CompiledComplaint): number {
  const silent = (grounded.links.get(complaint.id) ?? []).reduce(
    (quiet, { suspect, showings }) =>
      quiet * (1 - (grounded.prior[suspect] ?? 0) * showingStrength(showings)),
    1 - complaint.leak,
  );
  return 1 - silent;
}

/** One of some things, each with its weight; undefined when no weight is above 0. */
export function pickByWeight<T>(
  things: readonly T[],
  weight: (thing: T) => number,
  uniform: () => number,
): T | undefined {
  let left = uniform() * things.reduce((sum, thing) => sum + weight(thing), 0);
  let last: T | undefined;
  for (const thing of things) {
    const own = weight(thing);
    if (own <= 0) continue;
    last = thing;
    left -= own;
    if (left < 0) return thing;
  }
  return last;
}
