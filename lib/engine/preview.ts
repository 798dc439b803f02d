import type { Answer } from "./answers.ts";
import type { Grounded } from "./ground.ts";
import type { ProposedCheck } from "./propose.ts";
import { type RankedSuspect, weighing } from "./weigh.ts";

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
 * Each chance is exact: the ratio of the probabilities of the answers with and without the result.
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
  const weighed = results.map((added) => ({
    added,
    after: weighing(grounded, [...answers, ...added]).weighed,
  }));
  const asked = proposed.kind === "question";
  const top = Math.max(...weighed.map((w) => w.after.logEvidence));
  const total = weighed.reduce((sum, w) => sum + Math.exp(w.after.logEvidence - top), 0);
  const before = weighing(grounded, answers).weighed.logEvidence;
  return weighed.map(({ added, after }) => ({
    answers: added,
    // A feature's answer scales its complaint's evidence, so a question's chances are shares of its two answers.
    probability: asked
      ? Math.exp(after.logEvidence - top) / total
      : Math.min(1, Math.exp(after.logEvidence - before)),
    leaders: after.ranking.slice(0, LEADERS),
    notInKnowledge: after.notInKnowledge,
  }));
}
