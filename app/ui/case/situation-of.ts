import type { CaseState } from "../../../lib/case/case-state.ts";
import { findingAnswers, presentContexts } from "../../../lib/case/present-contexts.ts";
import { readCar } from "../../../lib/car/car.ts";
import { type FittedPart, fittedThatHold } from "../../../lib/engine/index.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { answerOfCase } from "../../engine/answer-of-case.ts";
import type { Situation } from "../../engine/protocol.ts";

/** What the engine is told of a case: nothing but the car, what happened to it and the answers. */
export function situationOf(knowledge: Knowledge, state: CaseState): Situation {
  return {
    car: state.car,
    contexts: presentContexts(knowledge, state),
    fitted: partsFitted(knowledge, state).hold,
    answers: findingAnswers(knowledge, state).map(answerOfCase),
  };
}

/** Parts whose age was entered: those that this car can have, and those that it cannot (since the car was changed). */
export function partsFitted(
  knowledge: Knowledge,
  state: CaseState,
): { readonly hold: readonly FittedPart[]; readonly odd: CaseState["fitted"] } {
  if (state.fitted.length === 0) return { hold: [], odd: [] };
  const hold = fittedThatHold(knowledge, carThatHolds(knowledge, state), state.fitted);
  return {
    hold: hold.map(({ entry: _, ...fitted }) => fitted),
    odd: state.fitted.filter((f) => !hold.includes(f)),
  };
}

function carThatHolds(knowledge: Knowledge, { car }: CaseState): ReturnType<typeof readCar>["car"] {
  try {
    return readCar(knowledge, car).car;
  } catch {
    // The ranking says what is wrong with the car.
    return new Map();
  }
}
