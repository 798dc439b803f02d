import type { CompiledCheck, Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import type { OpenAttempt } from "./use-attempt.ts";

/** What a check takes that the exercise does not give, in words; undefined when it can be made. */
export function notHere(
  knowledge: Knowledge,
  { terms }: OpenAttempt["exercise"],
  check: CompiledCheck,
): string | undefined {
  const needs = knowledge.setUps.setUps.find((s) => s.id === check.setUp)?.needs;
  const missing = [
    ...(!terms.lift && needs === "lift" ? ["there is no lift"] : []),
    ...(!terms.helper && check.helper ? ["there is nobody to help"] : []),
    ...check.tools.filter((tool) => terms.missingTools.includes(tool)).map((tool) => `no ${tool} is there`),
  ];
  return missing.length === 0 ? undefined : missing.join("; ");
}
