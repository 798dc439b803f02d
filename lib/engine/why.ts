import type { Answer } from "./answers.ts";
import { assembleEvidence } from "./assemble.ts";
import { posterior } from "./core/index.ts";
import { CornerwiseError } from "../errors.ts";
import type { Grounded } from "./ground.ts";
import { parseFinding } from "./finding-id.ts";
import { speakingAnswers } from "./speaking-answers.ts";
import { logOdds } from "../maths/log-odds.ts";

/** What one answer added to the log-odds that a suspect's fault is there. */
export interface AnswerWeight {
  readonly finding: string;
  readonly state: Answer["state"];
  /** Its share of the change from the prior; above 0 speaks for the suspect. All shares add up to the whole change. */
  readonly logOdds: number;
  /** Log-odds with all answers minus those with all but this one: what would go if it were taken back. */
  readonly ifTakenBack: number;
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
 * What each answer added or took away, so that the parts add up to the whole.
 *
 * Each answer is added in turn, once in the order of ids and once the other way round, and its two steps are averaged: every
 * two answers are met in both orders, so what they say together is shared evenly between them. That is Shapley's value as
 * long as answers overlap two by two; where three overlap it is close. It does not depend on the order of entry.
 * Features come after their complaint, without which they say nothing. Contexts are in the prior.
 *
 * Units: natural log-odds.
 * Errors: `unknown-id` when the suspect is not on this car.
 * Source: Shapley 1953, from memory.
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
  const chance = (kept: readonly Answer[]): number =>
    posterior(assembleEvidence(grounded, kept).evidence).marginals[index] ?? 0;
  // In the order of ids.
  const said = speakingAnswers(grounded, answers).sort((a, b) => (a.finding < b.finding ? -1 : 1));
  const blocks = blocksOf(grounded, said);
  const present = chance(said);
  const before = chance([]);
  const shares = new Map<Answer, number>();
  for (const order of [blocks.flat(), backwards(blocks)]) {
    let last = logit(before);
    order.forEach((answer, k) => {
      const now = k === order.length - 1 ? logit(present) : logit(chance(order.slice(0, k + 1)));
      shares.set(answer, (shares.get(answer) ?? 0) + (now - last) / 2);
      last = now;
    });
  }
  const weights = said.map((answer): AnswerWeight => {
    const without = said.filter((a) => a !== answer && !a.finding.startsWith(`${answer.finding}:`));
    return {
      finding: answer.finding,
      state: answer.state,
      logOdds: shares.get(answer) ?? 0,
      ifTakenBack: logit(present) - logit(chance(without)),
    };
  });
  weights.sort((a, b) => Math.abs(b.logOdds) - Math.abs(a.logOdds) || (a.finding < b.finding ? -1 : 1));
  return { suspect: suspectId, prior: grounded.suspects[index]?.prior ?? 0, present, answers: weights };
}

/** Each complaint with the features told of it after it; every other answer alone, bare features last. */
function blocksOf(grounded: Grounded, said: readonly Answer[]): Answer[][] {
  const blocks: Answer[][] = [];
  const bare: Answer[] = [];
  const complaints = new Map<string, Answer[]>();
  for (const answer of said) {
    const finding = parseFinding(grounded.knowledge, answer.finding);
    if (finding.kind === "feature" && finding.complaint === undefined) bare.push(answer);
    else if (finding.kind === "feature" || finding.kind === "complaint") {
      const id = finding.complaint?.id ?? "";
      const block = complaints.get(id) ?? [];
      if (!complaints.has(id)) blocks.push(block);
      complaints.set(id, block);
      block.push(answer);
    } else blocks.push([answer]);
  }
  return [...blocks, bare];
}

/** The other way round, with each complaint still before its features and bare features still last. */
function backwards(blocks: readonly (readonly Answer[])[]): Answer[] {
  const bare = blocks.at(-1) ?? [];
  const turned = blocks
    .slice(0, -1)
    .toReversed()
    .map(([first, ...rest]) => [...(first === undefined ? [] : [first]), ...rest.toReversed()]);
  return [...turned.flat(), ...bare.toReversed()];
}

function logit(p: number): number {
  return logOdds(Math.min(Math.max(p, 1e-12), 1 - 1e-12));
}
