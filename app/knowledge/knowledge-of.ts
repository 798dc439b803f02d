import { parseRelease } from "../../lib/knowledge/release.ts";
import type { Knowledge } from "../../lib/knowledge/schema/compiled.ts";

/**
 * A release's text as what it says.
 *
 * The form of the newest one is that of this very app. An older one is checked, and what it does not know of yet gets its
 * defaults.
 */
export function knowledgeOf(text: string, isNewest: boolean): Knowledge {
  return isNewest ? (JSON.parse(text) as Knowledge) : parseRelease(text);
}
