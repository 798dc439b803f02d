import type { CompiledCheck, Knowledge } from "./schema/compiled.ts";

/**
 * May a check be left to somebody who knows nothing of cars? The car stands, nobody else is needed, and nothing is raised,
 * loaded, driven, spun or hot; what it takes is worded by its `lay`.
 */
export function mayBeTried(knowledge: Pick<Knowledge, "setUps">, check: CompiledCheck): boolean {
  const needs = knowledge.setUps.setUps.find((s) => s.id === check.setUp)?.needs;
  return (
    check.lay !== undefined &&
    check.who !== "technician" &&
    !check.helper &&
    check.does.every((deed) => deed === "moves") &&
    needs === "nothing"
  );
}
