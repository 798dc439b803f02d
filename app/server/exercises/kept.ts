import type { Debrief, ReadyExercise } from "../../../lib/training/index.ts";

/** What the routes of exercises keep in memory. */
interface Kept {
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
