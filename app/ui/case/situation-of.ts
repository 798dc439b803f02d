import type { CaseState } from "../../../lib/case/case-state.ts";
import { findingAnswers, presentContexts } from "../../../lib/case/present-contexts.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import type { Situation } from "../../engine/protocol.ts";

/** What the engine is told of a case: nothing but the car, what happened to it and the answers. */
export function situationOf(knowledge: Knowledge, state: CaseState): Situation {
  return {
    car: state.car,
    contexts: presentContexts(knowledge, state),
    answers: findingAnswers(knowledge, state).map(({ finding, state: is, level, value, by }) => ({
      finding,
      state: is,
      ...(level !== undefined && { level }),
      ...(value !== undefined && { value }),
      by,
    })),
  };
}
