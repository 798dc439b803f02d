import type { Grounded } from "./ground.ts";

/** A dangerous fault that is likely enough to say what to do at once. */
export interface StopNotice {
  readonly suspect: string;
  readonly probability: number;
  readonly say: string;
}

/** Notices for every suspect whose chance of being there reaches its fault's own bar, likeliest first. */
export function stopNotices(grounded: Grounded, marginals: Float64Array): StopNotice[] {
  return grounded.suspects
    .flatMap((suspect) => {
      const stop = grounded.faults.get(suspect.fault)?.stop;
      const probability = marginals[suspect.index] ?? 0;
      return stop !== undefined && probability >= stop.from
        ? [{ suspect: suspect.id, probability, say: stop.say }]
        : [];
    })
    .sort((a, b) => b.probability - a.probability || (a.suspect < b.suspect ? -1 : 1));
}
