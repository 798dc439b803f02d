import type { Answer } from "./answers.ts";
import { parseFinding } from "./finding-id.ts";
import type { Grounded } from "./ground.ts";

/** Answers that say something of what is found, each finding once, the last one counting; contexts are in the priors. */
export function speakingAnswers(grounded: Grounded, answers: readonly Answer[]): Answer[] {
  return [...new Map(answers.map((a) => [a.finding, a])).values()].filter(
    (a) => a.state !== "unknown" && parseFinding(grounded.knowledge, a.finding).kind !== "context",
  );
}
