import type { Answer } from "../answers.ts";
import type { Grounded } from "../ground.ts";
import type { ProposedCheck } from "../propose.ts";
import type { Weighing } from "../weigh.ts";

/** What is known when the next check is chosen. */
export interface Situation {
  readonly grounded: Grounded;
  readonly answers: readonly Answer[];
  readonly weighing: Weighing;
  /** Everything that can be done now and tells something of the complaint, best first. */
  readonly proposed: readonly ProposedCheck[];
  /** Set-up that the car is in. */
  readonly setUp: string;
  readonly minutes: number;
}

/** A way of choosing the next check; it chooses among what can be done, or nothing when there is nothing. */
export interface Policy {
  readonly name: string;
  next(situation: Situation, uniform: () => number): ProposedCheck | undefined;
}

/** How a search ended: the repair named as the cause, or handing over; and the repairs to make in order. */
export interface Verdict {
  readonly kind: "repair" | "refer";
  /** `part@place` that is named; undefined when it is handed over. */
  readonly repair: string | undefined;
  /** Its chance as the one who names it sees it. */
  readonly chance: number;
  /** `part@place` in the order in which to repair; empty when it is handed over at once. */
  readonly order: readonly string[];
  /** Named because it is proven or likely enough, not for want of checks. */
  readonly sure: boolean;
}

/** When to end the search: a verdict, or undefined to go on. */
export interface StopRule {
  readonly name: string;
  verdict(situation: Situation): Verdict | undefined;
  /** The verdict when nothing is left to check, or the time is up. */
  atLast(situation: Situation): Verdict;
}
