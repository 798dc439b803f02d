import type { ReleasesHere } from "../../../lib/cli/releases-here.ts";
import type { Debrief, ReadyExercise } from "../../../lib/training/index.ts";

/** What the routes of exercises keep in memory. */
interface Kept {
  releases?: ReleasesHere;
  /** Cars of hand-outs that are being worked, by id. */
  readonly ready: Map<string, Promise<ReadyExercise>>;
  /** Attempts that were gone through of late. */
  readonly debriefs: Map<string, Debrief>;
}

/** Every route is a bundle of its own: what they share lies on the one global object. */
const KEY = Symbol.for("cornerwise.exercises");
const shared = globalThis as { [KEY]?: Kept };

export function kept(): Kept {
  return (shared[KEY] ??= { ready: new Map(), debriefs: new Map() });
}

/** What is kept under a key, made when it is not there; beyond `most` the one that was not used for longest goes. */
export function keptOrMade<T>(map: Map<string, T>, key: string, most: number, make: () => T): T {
  const value = map.get(key) ?? make();
  map.delete(key);
  map.set(key, value);
  const [oldest] = map.keys();
  if (map.size > most && oldest !== undefined) map.delete(oldest);
  return value;
}
