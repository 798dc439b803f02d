import type { Knowledge } from "../knowledge/schema/compiled.ts";
import type { CaseState } from "./case-state.ts";

/** What lately happened to the car: answered contexts that are present, in the order of answering. */
export function presentContexts(
  knowledge: Pick<Knowledge, "contexts">,
  state: Pick<CaseState, "answers">,
): string[] {
  const contexts = new Set(knowledge.contexts.map((context) => context.id));
  return state.answers
    .filter((answer) => answer.state === "present" && contexts.has(answer.finding))
    .map((answer) => answer.finding);
}
