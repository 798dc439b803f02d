import { type CarInput, readCar } from "../car/car.ts";
import { type Answer, type FittedPart, fittedThatHold } from "../engine/index.ts";
import type { Knowledge } from "../knowledge/schema/compiled.ts";
import type { CaseState } from "./case-state.ts";
import { presentContexts } from "./present-contexts.ts";

/** What of a case is weighed. */
export type WeighedState = Pick<CaseState, "car" | "answers" | "fitted">;

/** What a case gives the engine. */
export interface Situation {
  readonly car: CarInput;
  readonly contexts: readonly string[];
  /** Parts whose age is known. */
  readonly fitted: readonly FittedPart[];
  readonly answers: readonly Answer[];
}

/** What the engine is told of a case: nothing but the car, what happened to it and the answers. */
export function situationOf(knowledge: Knowledge, state: WeighedState): Situation {
  return {
    car: state.car,
    contexts: presentContexts(knowledge, state),
    fitted: partsFitted(knowledge, state).hold,
    // What did not happen to the car weighs nothing, but is not to be asked for again.
    answers: state.answers.map(answerOfCase),
  };
}

/**
 * What the engine is told of an answer, and nothing else, with its fields always in one order: who works something out ahead
 * finds it again by it.
 */
export function answerOfCase({ finding, state, level, value, by }: Answer): Answer {
  return {
    finding,
    state,
    ...(level !== undefined && { level }),
    ...(value !== undefined && { value }),
    by,
  };
}

/** Parts whose age was entered: those that this car can have, and those that it cannot (since the car was changed). */
export function partsFitted(
  knowledge: Knowledge,
  state: WeighedState,
): { readonly hold: readonly FittedPart[]; readonly odd: CaseState["fitted"] } {
  if (state.fitted.length === 0) return { hold: [], odd: [] };
  const hold = fittedThatHold(knowledge, carThatHolds(knowledge, state), state.fitted);
  return {
    hold: hold.map(({ entry: _, ...fitted }) => fitted),
    odd: state.fitted.filter((f) => !hold.includes(f)),
  };
}

function carThatHolds(knowledge: Knowledge, { car }: WeighedState): ReturnType<typeof readCar>["car"] {
  try {
    return readCar(knowledge, car).car;
  } catch {
    // Weighing says what is wrong with the car.
    return new Map();
  }
}
