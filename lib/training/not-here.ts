import { placedCheck, type ReadyExercise } from "./exercise-car.ts";

/**
 * Why a check cannot be made with what the exercise gives, in words; undefined when it can.
 *
 * Errors: `unknown-id` for a check that cannot be made on this car.
 */
export function whyNotHere({ exercise, grounded }: ReadyExercise, id: string): string | undefined {
  if (id.startsWith("ask:")) return undefined;
  const { check } = placedCheck(grounded, id);
  const { lift, helper, missingTools } = exercise.terms;
  const needs = grounded.knowledge.setUps.setUps.find((s) => s.id === check.setUp)?.needs;
  if (!lift && needs === "lift") return "it needs a lift, and there is none";
  if (!helper && check.helper) return "it needs a second person, and nobody else is there";
  const missing = check.tools.find((tool) => missingTools.includes(tool));
  return missing === undefined ? undefined : `it needs a tool that is not there: ${missing}`;
}
