import type { AnswerState } from "../answers.ts";

/** What is recorded when a choice is taken: findings as told, to be entered as reports. */
export interface LayAnswer {
  readonly finding: string;
  readonly state: AnswerState;
  readonly level?: string | undefined;
}

/** One answer that can be given to a question, in plain words. */
export interface LayChoice {
  readonly label: string;
  readonly answers: readonly LayAnswer[];
}

/** Something that an owner or driver can answer or look at, worded for somebody who knows nothing of cars. */
export interface LayQuestion {
  /**
   * `ask:complaint` for what is wrong at all, `ask:FINDING`, `together:COMPLAINT:FEATURE+FEATURE`, `try:CHECK` or
   * `try:CHECK@PLACE`.
   */
  readonly id: string;
  /** A question is answered from memory; a try is a look or a touch at the standing car. */
  readonly kind: "question" | "try";
  readonly question: string;
  readonly help?: string | undefined;
  /** What it is like in daily life: "like two spoons knocked together". */
  readonly example?: string | undefined;
  /** Id of a drawing of the knowledge (`lay.pictures`). */
  readonly picture?: string | undefined;
  /** What to do, for a try; empty for a question. */
  readonly steps: readonly string[];
  readonly cautions: readonly string[];
  /** The last one is always "Don't know". */
  readonly choices: readonly LayChoice[];
}

const DO_NOT_KNOW = "Don't know";

/** One choice that says the same of all the findings given. */
export function choiceOf(label: string, state: AnswerState, ...findings: readonly string[]): LayChoice {
  return { label, answers: findings.map((finding) => ({ finding, state })) };
}

/** The way out of every question: whatever it asks for stays open, and is not asked again. */
export function doNotKnow(findings: readonly string[]): LayChoice {
  return choiceOf(DO_NOT_KNOW, "unknown", ...findings);
}
