import { CASE_LIMITS } from "../../lib/case/case-file.ts";
import type { Entry } from "../../lib/case/entries.ts";
import { entriesAfter, type Store } from "../../lib/store/index.ts";

/**
 * All entries of a case, of one moment.
 *
 * Errors  StoreProblem no-such-case, case-removed.
 */
export async function everyEntry(
  store: Store,
  caseId: string,
): Promise<{ readonly version: number; readonly entries: readonly Entry[] }> {
  const { version, entries } = await entriesAfter(store, caseId, 0, CASE_LIMITS.entries);
  return { version, entries: entries.map(({ entry }) => entry) };
}
