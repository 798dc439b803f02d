import type { CompiledCheck, Knowledge } from "../knowledge/schema/compiled.ts";
import { placedCheck, type ReadyExercise } from "./exercise-car.ts";
import type { Exercise } from "./exercise.ts";

/** Tools of a check that the exercise does not have; exactly those that the check names, "this or that" being one name. */
export function toolsNotHere(
  { missingTools }: Pick<Exercise["terms"], "missingTools">,
  { tools }: Pick<CompiledCheck, "tools">,
): string[] {
  return tools.filter((tool) => missingTools.includes(tool));
}

/** What a check takes that the exercise does not give, in words; empty when it can be made. */
export function lacksOf(knowledge: Knowledge, terms: Exercise["terms"], check: CompiledCheck): string[] {
  const needs = knowledge.setUps.setUps.find((s) => s.id === check.setUp)?.needs;
  return [
    ...(!terms.lift && needs === "lift" ? ["there is no lift"] : []),
    ...(!terms.helper && check.helper ? ["there is nobody to help"] : []),
    ...toolsNotHere(terms, check).map((tool) => `no ${tool} is there`),
  ];
}

/**
 * Why a check cannot be made with what the exercise gives, in words; undefined when it can.
 *
 * Errors: `unknown-id` for a check that cannot be made on this car.
 */
export function whyNotHere({ exercise, grounded }: ReadyExercise, id: string): string | undefined {
  if (id.startsWith("ask:")) return undefined;
  const { check } = placedCheck(grounded, id);
  const lacks = lacksOf(grounded.knowledge, exercise.terms, check);
  return lacks.length === 0 ? undefined : lacks.join("; ");
}
