import type { Answer } from "../engine/index.ts";
import { toldFeatures } from "../engine/simulate/index.ts";
import type { Knowledge } from "../knowledge/schema/compiled.ts";
import type { Exercise } from "./exercise.ts";
import { readyExercise } from "./exercise-car.ts";

/** A car whose faults are set, and what its customer complains of. */
export interface SaidWish {
  readonly exercise: Omit<Exercise, "said" | "text">;
  readonly complaint: string;
  /** Features that are told of the complaint; 4 when left out. */
  readonly told?: number | undefined;
}

/**
 * What a customer would say of the hidden faults: the complaint, and features of it as the model gives them.
 *
 * Features that are spoken of do not depend on what is wrong; only whether they are there does, as far as the customer is
 * to be trusted.
 * Errors: as `readyExercise`.
 */
export function drawSaid(
  knowledge: Knowledge,
  { exercise, complaint, told = 4 }: SaidWish,
  uniform: () => number,
): Exercise["said"] {
  const said: Exercise["said"] = [{ finding: complaint, state: "present" }];
  const { car } = readyExercise(knowledge, { ...exercise, said, text: "" });
  const features = toldFeatures(car.world, car.complaint, told, car.seed, car.heard, uniform);
  return [...said, ...statedOf(features)];
}

/** Answers as an exercise holds what is said; what is not known is not said. */
export function statedOf(answers: readonly Answer[]): Exercise["said"] {
  return answers.flatMap(({ finding, state }) => (state === "unknown" ? [] : [{ finding, state }]));
}
