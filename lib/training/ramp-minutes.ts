import type { Grounded } from "../engine/index.ts";
import type { CompiledCheck } from "../knowledge/schema/compiled.ts";
import type { Step } from "./attempt.ts";
import { placedCheck } from "./exercise-car.ts";

/** What one check or question takes, from the set-up that the car is in. */
export interface StepTakes {
  /** With bringing the car into the set-up. Units: minutes. */
  readonly minutes: number;
  /** The set-up afterwards. */
  readonly setUp: string;
  /** Undefined for a question. */
  readonly check: CompiledCheck | undefined;
  readonly place: string | undefined;
}

/** Errors: `unknown-id` for a check that cannot be made on this car. */
export function stepTakes(grounded: Grounded, id: string, from: string): StepTakes {
  const { setUps, reports } = grounded.knowledge;
  if (id.startsWith("ask:"))
    return { minutes: reports.questionMinutes, setUp: from, check: undefined, place: undefined };
  const { check, place } = placedCheck(grounded, id);
  const minutes = check.minutes + (setUps.minutes[from]?.[check.setUp] ?? 0);
  return { minutes, setUp: check.setUp, check, place };
}

/** Minutes on the ramp that these steps took, and how the car stands after them; nothing is weighed for it. */
export function rampMinutes(
  grounded: Grounded,
  steps: readonly Step[],
): { readonly minutes: number; readonly setUp: string } {
  let minutes = 0;
  let setUp = grounded.knowledge.setUps.start;
  for (const step of steps) {
    if (step.kind !== "check") continue;
    const takes = stepTakes(grounded, step.id, setUp);
    minutes += takes.minutes;
    setUp = takes.setUp;
  }
  return { minutes, setUp };
}
