import { CornerwiseError } from "../errors.ts";
import { CASE_FORMAT, CASE_SCHEMA_VERSION } from "./case-file.ts";
import type { Entry } from "./entries.ts";
import { orderEntries } from "./order-entries.ts";

/**
 * A case as JSON text: its whole history, retracted entries included.
 *
 * Errors  bad-request: no entries, or entries of more than one case.
 */
export function exportCase(entries: Iterable<Entry>): string {
  const ordered = orderEntries(entries);
  const caseIds = [...new Set(ordered.map((entry) => entry.caseId))];
  const [caseId] = caseIds;
  if (caseId === undefined || caseIds.length > 1) {
    const found = caseId === undefined ? "no entries" : `entries of ${caseIds.length} cases`;
    throw new CornerwiseError(
      "bad-request",
      `A case file holds one case; ${found} given. Export one at a time.`,
      {
        caseIds,
      },
    );
  }
  const file = { format: CASE_FORMAT, schemaVersion: CASE_SCHEMA_VERSION, caseId, entries: ordered };
  return `${JSON.stringify(file, null, 2)}\n`;
}
