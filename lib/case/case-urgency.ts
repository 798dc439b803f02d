import { driveAdvice, groundCar, weighing } from "../engine/index.ts";
import type { Advice } from "../knowledge/schema/advice.ts";
import type { Knowledge } from "../knowledge/schema/compiled.ts";
import type { KnownEntry } from "./entries.ts";
import type { Situation } from "./situation.ts";

/** Kinds of entry that can change what a case gives the engine, and those that can take such a one back. */
export const WEIGHED_KINDS: readonly string[] = [
  "opened",
  "release-changed",
  "car-changed",
  "answered",
  "fitted",
  "retracted",
] satisfies readonly KnownEntry["kind"][];

/** How urgent a case is, from what was told of it. */
export type Urgency =
  | {
      readonly is: "level";
      /** Id of a level of the advice. */
      readonly level: string;
      /** As `driveAdvice` gives it: 1 is as bad as one dangerous fault at its bar. */
      readonly danger: number;
    }
  /** Nothing was said to be there: any car of this age would be weighed alike. */
  | { readonly is: "nothing-told" };

/**
 * How urgent a case is: the level of what is to be said about driving.
 *
 * `advice` stands in for a release that holds none yet.
 * Errors  as groundCar and weighing.
 */
export function caseUrgency(knowledge: Knowledge, situation: Situation, advice: Advice): Urgency {
  const { car, contexts, fitted, answers } = situation;
  const grounded = groundCar(knowledge, car, contexts, fitted);
  const { weighed } = weighing(grounded, answers);
  if (weighed.target === "none") return { is: "nothing-told" };
  const { level, danger } = driveAdvice(grounded, weighed, knowledge.advice ?? advice);
  return { is: "level", level, danger };
}

/** Place of a case that nobody could weigh (yet): right behind the gravest, as it may be one of them. */
export const UNKNOWN_RANK = 1;
/** Last of the open ones: there is nothing to go by. */
const NOTHING_TOLD_RANK = 99;

/**
 * Place among the open cases, the most urgent first, from 0 on.
 *
 * Shape   levels: of the newest advice, the gravest first; a level that it does not hold any more counts as not known.
 */
export function urgencyRank(urgency: Urgency | undefined, levels: Advice["levels"]): number {
  if (urgency === undefined) return UNKNOWN_RANK;
  if (urgency.is === "nothing-told") return NOTHING_TOLD_RANK;
  const index = levels.findIndex(({ id }) => id === urgency.level);
  return index <= 0 ? (index === 0 ? 0 : UNKNOWN_RANK) : index + 1;
}
