import type { Answer } from "./answers.ts";
import { assembleEvidence } from "./assemble.ts";
import { posterior } from "./core/index.ts";
import { CornerwiseError } from "../errors.ts";
import type { Grounded } from "./ground.ts";

/** What one answer added to the log-odds that a suspect's fault is there. */
export interface AnswerWeight {
  readonly finding: string;
  readonly state: Answer["state"];
  /** Natural log-odds with all answers minus those with all but this one; above 0 speaks for the suspect. */
  readonly logOdds: number;
}

/** Why a suspect stands where it does. */
export interface Why {
  readonly suspect: string;
  readonly prior: number;
  readonly present: number;
  /** Strongest first, ties by id. */
  readonly answers: readonly AnswerWeight[];
}

/**
 * What each answer added or took away, by leaving it out and weighing again.
 *
 * A complaint left out takes its features with it. The parts need not add up to the whole: answers overlap.
 *
 * Units: natural log-odds.
 * Errors: `unknown-id` when the suspect is not on this car.
 */
export function whySuspect(grounded: Grounded, answers: readonly Answer[], suspectId: string): Why {
  const index = grounded.suspectIndex.get(suspectId);
  if (index === undefined) {
    throw new CornerwiseError(
      "unknown-id",
      `Suspect "${suspectId}" is not on this car; take one from the ranking.`,
      {
        id: suspectId,
      },
    );
  }
  const chance = (kept: readonly Answer[]): number => {
    const { evidence } = assembleEvidence(grounded, kept);
    return posterior(evidence).marginals[index] ?? 0;
  };
  const present = chance(answers);
  const weights = answers
    .filter((a) => a.state !== "unknown")
    .map((answer) => {
      const without = answers.filter((a) => a !== answer && !a.finding.startsWith(`${answer.finding}:`));
      return {
        finding: answer.finding,
        state: answer.state,
        logOdds: logit(present) - logit(chance(without)),
      };
    });
  weights.sort((a, b) => Math.abs(b.logOdds) - Math.abs(a.logOdds) || (a.finding < b.finding ? -1 : 1));
  return { suspect: suspectId, prior: grounded.suspects[index]?.prior ?? 0, present, answers: weights };
}

function logit(p: number): number {
  const held = Math.min(Math.max(p, 1e-12), 1 - 1e-12);
  return Math.log(held) - Math.log1p(-held);
}
