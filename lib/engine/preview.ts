import { writeCar } from "../car/car.ts";
import type { Answer } from "./answers.ts";
import { parseFinding } from "./finding-id.ts";
import { type Grounded, groundCar } from "./ground.ts";
import type { ProposedCheck } from "./propose.ts";
import { type RankedSuspect, type Weighing, weighing } from "./weigh.ts";

/** One result that a check may have, and the ranking that it would lead to. */
export interface PreviewedResult {
  readonly answers: readonly Answer[];
  /** Chance of this result as things stand. */
  readonly probability: number;
  readonly leaders: readonly RankedSuspect[];
  readonly notInKnowledge: number;
  /** The weighing of the answers so far and these; undefined when they move the priors, as the car is another one then. */
  readonly weighing: Weighing | undefined;
}

/** Suspects shown for each result. */
const LEADERS = 3;

/**
 * What each result of a check would do to the ranking, before it is made: nothing found, and each finding in each grade
 * with the others not found. Results of several findings at once are not listed.
 *
 * A check's chances are exact, the ratio of the probabilities of the answers with and without the result; a question's
 * come from the mixture that chose it. `now` is the weighing of the answers so far, where there is one.
 */
export function previewResults(
  grounded: Grounded,
  answers: readonly Answer[],
  proposed: ProposedCheck,
  now: Weighing = weighing(grounded, answers),
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
  const before = now.weighed.logEvidence;
  return results.map((added, k) => {
    const all = [...answers, ...added];
    const ground = groundAfter(grounded, all);
    const then = weighing(ground, all);
    const { weighed: after } = then;
    const exact = Math.min(1, Math.exp(after.logEvidence - before));
    return {
      answers: added,
      probability: proposed.yes === undefined ? exact : k === 0 ? 1 - proposed.yes : proposed.yes,
      leaders: after.ranking.slice(0, LEADERS),
      notInKnowledge: after.notInKnowledge,
      weighing: ground === grounded ? then : undefined,
    };
  });
}

/** What happened to the car moves the priors, so the car is laid out anew. */
function groundAfter(grounded: Grounded, answers: readonly Answer[]): Grounded {
  const happened = answers.filter(
    (a) => a.state === "present" && parseFinding(grounded.knowledge, a.finding).kind === "context",
  );
  const contexts = [...new Set([...grounded.contexts, ...happened.map((a) => a.finding)])];
  return contexts.length === grounded.contexts.length
    ? grounded
    : groundCar(grounded.knowledge, writeCar(grounded.car), contexts, grounded.fitted);
}
