import { type ProposeOptions, workshopCosts } from "../engine/index.ts";
import { byExpectedCost, playCase, type PlayedCase, shippedChoice } from "../engine/policies/index.ts";
import type { ReadyExercise } from "./exercise-car.ts";

/** What the exercise lets a trainee do, as choosing a check takes it: checks that need a tool that is not there are left out. */
export function meansOf({
  exercise,
  grounded,
}: ReadyExercise): Pick<ProposeOptions, "lift" | "helper" | "notPossible"> {
  const { lift, helper, missingTools } = exercise.terms;
  const missing = new Set(missingTools);
  const notPossible = grounded.knowledge.checks
    .filter((check) => check.tools.some((tool) => missing.has(tool)))
    .map((check) => check.id);
  return { lift, helper, notPossible };
}

/** The shipped policy's way from the same start, on the same car, with the same means. */
export function bestWay(ready: ReadyExercise): PlayedCase {
  const costs = workshopCosts(ready.grounded.knowledge);
  return playCase(ready.grounded, ready.car, shippedChoice, byExpectedCost(costs), {
    costs,
    ...meansOf(ready),
    // The shipped policy chooses nothing by chance.
    uniform: () => 0,
  });
}
