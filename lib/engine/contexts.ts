import { CornerwiseError } from "../errors.ts";
import type { Knowledge } from "../knowledge/schema/compiled.ts";

/**
 * Ids of things that happened lately, once each, in order.
 *
 * Errors: `unknown-id` for one that the knowledge does not hold.
 */
export function knownContexts(knowledge: Knowledge, contexts: readonly string[]): string[] {
  const happened = [...new Set(contexts)].sort();
  for (const id of happened) {
    if (!knowledge.contexts.some((c) => c.id === id)) {
      throw new CornerwiseError(
        "unknown-id",
        `"${id}" is not something that can have happened; see the list of findings.`,
        { id },
      );
    }
  }
  return happened;
}
