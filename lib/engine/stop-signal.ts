import type { ProposedCheck } from "./propose.ts";
import type { Weighed } from "./weigh.ts";

/** Whether to go on checking. */
export interface StopSignal {
  readonly kind: "nothing-reported" | "check-on" | "proven" | "nothing-more-to-learn";
  readonly why: string;
}

/** A proven suspect ends the search when it also explains the complaint at least this well. */
const EXPLAINS_ENOUGH = 0.5;
/** Checks that promise less than this many bits are not worth the ramp. */
const WORTH_CHECKING = 0.03;

/** Reads off whether a part is proven, whether checking pays, or whether the checks have run out. */
export function stopSignal(weighed: Weighed, proposed: readonly ProposedCheck[]): StopSignal {
  if (weighed.target === "none") {
    return { kind: "nothing-reported", why: "Nothing was noticed yet: say what the car does." };
  }
  const leader = weighed.ranking.find((r) => r.proven && r.explains >= EXPLAINS_ENOUGH);
  if (leader !== undefined) {
    return {
      kind: "proven",
      why: "A decisive finding proves a part that explains the complaint: the verdict can be given.",
    };
  }
  const best = proposed.reduce((most, p) => Math.max(most, p.gainBits), 0);
  if (best < WORTH_CHECKING) {
    return {
      kind: "nothing-more-to-learn",
      why: "No check left would move the ranking: decide on what is known, look further with other means, or refer it.",
    };
  }
  return { kind: "check-on", why: "No part is proven yet: make the next check." };
}
