import type { CompiledFault } from "../knowledge/schema/compiled.ts";
import type { Grounded } from "./ground.ts";
import type { Suspect } from "./suspect.ts";

/** A dangerous fault that is likely enough to say what to do at once. */
export interface StopNotice {
  readonly suspect: string;
  readonly probability: number;
  readonly say: string;
}

/** A decisive finding seen by hand gives notice at this share of the fault's own bar: rare is no reason to drive on. */
const SEEN_BAR = 0.1;

/**
 * Notices for every suspect whose chance of being there reaches its fault's own bar, likeliest first.
 *
 * Where a decisive finding was seen by hand (`decisivelySeen`, indices of suspects) a tenth of the bar is enough.
 */
export function stopNotices(
  grounded: Grounded,
  marginals: Float64Array,
  decisivelySeen: ReadonlySet<number>,
): StopNotice[] {
  return watched(grounded)
    .flatMap(({ suspect, stop }) => {
      const probability = marginals[suspect.index] ?? 0;
      const bar = decisivelySeen.has(suspect.index) ? SEEN_BAR * stop.from : stop.from;
      return probability >= bar ? [{ suspect: suspect.id, probability, say: stop.say }] : [];
    })
    .sort((a, b) => b.probability - a.probability || (a.suspect < b.suspect ? -1 : 1));
}

interface Watched {
  readonly suspect: Suspect;
  readonly stop: NonNullable<CompiledFault["stop"]>;
}

const WATCHED = new WeakMap<Grounded, readonly Watched[]>();

/** The suspects whose fault has a notice. */
function watched(grounded: Grounded): readonly Watched[] {
  const kept = WATCHED.get(grounded);
  if (kept !== undefined) return kept;
  const found = grounded.suspects.flatMap((suspect) => {
    const stop = grounded.faults.get(suspect.fault)?.stop;
    return stop === undefined ? [] : [{ suspect, stop }];
  });
  WATCHED.set(grounded, found);
  return found;
}
