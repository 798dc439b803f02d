import type { Answer } from "../answers.ts";
import { parseFinding } from "../finding-id.ts";
import type { Grounded } from "../ground.ts";
import type { Weighed } from "../weigh.ts";
import { speakingAnswers } from "../speaking-answers.ts";
import { leaderOf, quickLook } from "./quick-look.ts";

/** One answer against all others. */
export interface AnswerFit {
  readonly finding: string;
  readonly state: Answer["state"];
  readonly by: Answer["by"];
  /** Chance of this answer before anything else was known. */
  readonly alone: number;
  /** Chance of this answer given all the others. */
  readonly givenOthers: number;
  /** Jensen's measure of this answer against the others together, in bits; above 0 they speak against each other. */
  readonly conflict: number;
  /** Chance that it is the wrong way round, by how often such answers are and how well it fits. */
  readonly misread: number;
  /** Who would lead without it: `fault@place`. */
  readonly leaderWithout: string;
}

/** How well the answers go together. */
export interface Misfit {
  /** Jensen's measure of all answers, in bits: log2 of the product of their own chances over the joint one. */
  readonly conflict: number;
  /** Likeliest to be wrong first. */
  readonly answers: readonly AnswerFit[];
  /** The answer worth a second look; undefined when none surprises enough. */
  readonly lookAgain: AnswerFit | undefined;
  /** Causes outside the knowledge are likelier than not. */
  readonly unexplained: boolean;
  readonly notInKnowledge: number;
}

/** Figures of a knowledge that states none (a release before 1.0.0). */
const MISREAD = { check: 0.03, report: 0.1 };
const LOOK_AGAIN_BITS = 5;
const UNEXPLAINED_FROM = 0.5;

/**
 * How well the answers fit together, and which one is most likely wrong: each is left out in turn and foreseen from the
 * others.
 *
 * With p the chance of an answer given the others, the rest would fit (1 - p) / p times as well with it turned round; that
 * and how often such answers are wrong give its chance to be misread. Nothing is changed: it is for looking again.
 * A complaint counts with its features left out; its features are set beside the complaint alone. The complaint itself is
 * what is to be explained and is never named.
 * Units: bits.
 * Source: Jensen, Chamberlain, Nordahl and Jensen 1991, for the measure of conflict; from memory.
 */
export function misfit(grounded: Grounded, answers: readonly Answer[], weighed: Weighed): Misfit {
  const { doubt } = grounded.knowledge;
  const told = speakingAnswers(grounded, answers);
  const all = quickLook(grounded, told);
  const nothing = quickLook(grounded, []).logLikelihood;
  const rates = doubt?.misread ?? MISREAD;
  const fits: AnswerFit[] = [];
  let own = 0;
  for (const answer of told) {
    const complaint = complaintOf(grounded, told, answer);
    const before = complaint === undefined ? nothing : quickLook(grounded, [complaint]).logLikelihood;
    const by = complaint === undefined ? [answer] : [complaint, answer];
    const alone = Math.min(0, quickLook(grounded, by).logLikelihood - before);
    own += alone;
    if (isTarget(grounded, answer)) continue;
    const others = told.filter((a) => a !== answer);
    const without = quickLook(grounded, others);
    const given = Math.min(0, all.logLikelihood - without.logLikelihood);
    const chance = Math.exp(given);
    const rate = rates[answer.by];
    fits.push({
      finding: answer.finding,
      state: answer.state,
      by: answer.by,
      alone: Math.exp(alone),
      givenOthers: chance,
      conflict: (alone - given) / Math.LN2,
      misread: (rate * (1 - chance)) / (rate * (1 - chance) + (1 - rate) * chance),
      leaderWithout: grounded.suspects[leaderOf(without)]?.id ?? "",
    });
  }
  fits.sort((a, b) => b.misread - a.misread || (a.finding < b.finding ? -1 : 1));
  const bits = doubt?.lookAgain.bits ?? LOOK_AGAIN_BITS;
  return {
    conflict: (own - (all.logLikelihood - nothing)) / Math.LN2,
    answers: fits,
    lookAgain: fits.find((fit) => surprise(fit) >= bits),
    unexplained:
      weighed.target !== "none" && weighed.notInKnowledge >= (doubt?.unexplainedFrom ?? UNEXPLAINED_FROM),
    notInKnowledge: weighed.notInKnowledge,
  };
}

/** How much an answer surprises, given the others: the bound for a second look is on this. Units: bits. */
export function surprise(fit: AnswerFit): number {
  return -Math.log2(Math.max(fit.givenOthers, Number.MIN_VALUE));
}

/** The complaint that a feature belongs to; made up when only the feature was told. */
function complaintOf(grounded: Grounded, told: readonly Answer[], answer: Answer): Answer | undefined {
  const finding = parseFinding(grounded.knowledge, answer.finding);
  if (finding.kind !== "feature") return undefined;
  const ids = finding.complaint === undefined ? finding.feature.complaints : [finding.complaint.id];
  const named = told.find((a) => ids.includes(a.finding) && a.state === "present");
  return named ?? { finding: ids[0] ?? "", state: "present", by: answer.by };
}

/** A complaint that is there: what is to be explained, not evidence that may be taken back. */
function isTarget(grounded: Grounded, answer: Answer): boolean {
  return answer.state === "present" && parseFinding(grounded.knowledge, answer.finding).kind === "complaint";
}
