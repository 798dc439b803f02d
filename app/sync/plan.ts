/** One case as the planner sees it. */
export interface CaseToSync {
  readonly caseId: string;
  /** Entries that may go out now: neither held nor refused. */
  readonly sendable: number;
  /** Every entry of the server up to this number is here. */
  readonly after: number;
  /** Newest number heard of. */
  readonly heard: number;
  /** Somebody wants to see the newest state, whether or not there is news. */
  readonly asked: boolean;
  /** It is on a screen. */
  readonly open: boolean;
  /** The server does not take it; it may still be asked for. */
  readonly stopped: boolean;
  /** Not to be tried before, in milliseconds. */
  readonly notBefore: number;
}

export type Step =
  | { readonly do: "send" | "pull"; readonly caseId: string }
  | { readonly do: "wait"; readonly ms: number }
  | { readonly do: "rest" };

/**
 * What to do next.
 *
 * What is on a screen comes first, and sending before pulling: an answer must reach the server before anything else.
 * A case that must wait never holds up another one. Times in milliseconds.
 */
export function nextStep(cases: readonly CaseToSync[], serverNotBefore: number, now: number): Step {
  const wanting = cases.filter((one) => sends(one) || pulls(one));
  const ready = wanting.filter((one) => Math.max(one.notBefore, serverNotBefore) <= now);
  const best = ready.reduce<CaseToSync | undefined>(
    (first, one) => (first === undefined || urgency(one) < urgency(first) ? one : first),
    undefined,
  );
  if (best !== undefined) return { do: sends(best) ? "send" : "pull", caseId: best.caseId };
  if (wanting.length === 0) return { do: "rest" };
  const soonest = Math.min(...wanting.map((one) => Math.max(one.notBefore, serverNotBefore)));
  return { do: "wait", ms: soonest - now };
}

function sends(one: CaseToSync): boolean {
  return one.sendable > 0 && !one.stopped;
}

function pulls(one: CaseToSync): boolean {
  return one.asked || (one.heard > one.after && !one.stopped);
}

function urgency(one: CaseToSync): number {
  return (one.open ? 0 : 2) + (sends(one) ? 0 : 1);
}
