import { type Grounded, type ProposeOptions, workshopCosts } from "../engine/index.ts";
import { byExpectedCost, playCase, type PlayedCase, shippedChoice } from "../engine/policies/index.ts";
import type { ReadyExercise } from "./exercise-car.ts";
import type { Exercise } from "./exercise.ts";
import { toolsNotHere } from "./not-here.ts";

/** What the exercise lets a trainee do, as choosing a check takes it: checks that need a tool that is not there are left out. */
export function meansOf({
  exercise,
  grounded,
}: {
  readonly exercise: Pick<Exercise, "terms">;
  readonly grounded: Pick<Grounded, "knowledge">;
}): Pick<ProposeOptions, "lift" | "helper"> & { readonly notPossible: readonly string[] } {
  const { lift, helper } = exercise.terms;
  const notPossible = grounded.knowledge.checks
    .filter((check) => toolsNotHere(exercise.terms, check).length > 0)
    .map((check) => check.id);
  return { lift, helper, notPossible };
}

/** Score, debrief and difficulty ask for it, and so does each verdict of a class. */
const PLAYED = new WeakMap<ReadyExercise, PlayedCase>();

/** The shipped policy's way from the same start, on the same car, with the same means. */
export function bestWay(ready: ReadyExercise): PlayedCase {
  const played = PLAYED.get(ready) ?? playBestWay(ready);
  PLAYED.set(ready, played);
  return played;
}

function playBestWay(ready: ReadyExercise): PlayedCase {
  const costs = workshopCosts(ready.grounded.knowledge);
  return playCase(ready.grounded, ready.car, shippedChoice, byExpectedCost(costs), {
    costs,
    ...meansOf(ready),
    // The shipped policy chooses nothing by chance.
    uniform: () => 0,
  });
}
