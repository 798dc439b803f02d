import { writeCar } from "../car/car.ts";
import type { Answer } from "./answers.ts";
import { parseFinding } from "./finding-id.ts";
import { type Grounded, groundCar } from "./ground.ts";
import type { ProposedCheck } from "./propose.ts";
import { type RankedSuspect, type Weighed, weighing } from "./weigh.ts";

/** One result that a check may have, and the ranking that it would lead to. */
export interface PreviewedResult {
  readonly answers: readonly Answer[];
  /** Chance of this result as things stand. */
  readonly probability: number;
  readonly leaders: readonly RankedSuspect[];
  readonly notInKnowledge: number;
}

/** Suspects shown for each result. */
const LEADERS = 3;

/**
 * What each result of a check would do to the ranking, before it is made: nothing found, and each finding in each grade
 * with the others not found. Results of several findings at once are not listed.
 *
 * A check's chances are exact, the ratio of the probabilities of the answers with and without the result; a question's
 * come from the mixture that chose it.
 */
export function previewResults(
  grounded: Grounded,
  answers: readonly Answer[],
  proposed: ProposedCheck,
): PreviewedResult[] {
  const by = proposed.kind === "check" ? "check" : "report";
  const none = proposed.settles.map((s): Answer => ({ finding: s.finding, state: "absent", by }));
  const results: Answer[][] = [none];
  proposed.settles.forEach((settled, k) => {
    for (const level of settled.levels) {
      results.push(
        none.map(
          (a, other): Answer =>
            other === k
              ? { finding: a.finding, state: "present", by, ...(settled.levels.length > 1 ? { level } : {}) }
              : a,
        ),
      );
    }
  });
  const before = weighing(grounded, answers).weighed.logEvidence;
  return results.map((added, k) => {
    const after = weighAfter(grounded, [...answers, ...added]);
    const exact = Math.min(1, Math.exp(after.logEvidence - before));
    return {
      answers: added,
      probability: proposed.yes === undefined ? exact : k === 0 ? 1 - proposed.yes : proposed.yes,
      leaders: after.ranking.slice(0, LEADERS),
      notInKnowledge: after.notInKnowledge,
    };
  });
}

/** Weighs with answers that may tell what happened to the car: that moves the priors, so the car is laid out anew. */
function weighAfter(grounded: Grounded, answers: readonly Answer[]): Weighed {
  const happened = answers.filter(
    (a) => a.state === "present" && parseFinding(grounded.knowledge, a.finding).kind === "context",
  );
  const contexts = [...new Set([...grounded.contexts, ...happened.map((a) => a.finding)])];
  const ground =
    contexts.length === grounded.contexts.length
      ? grounded
      : groundCar(grounded.knowledge, writeCar(grounded.car), contexts, grounded.fitted);
  return weighing(ground, answers).weighed;
}
