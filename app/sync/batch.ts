import type { Entry } from "../../lib/case/entries.ts";
import { orderEntries } from "../../lib/case/order-entries.ts";

/** Most entries that the server takes at once. */
export const MOST_ENTRIES = 200;

/** Most characters of JSON in one batch; the server takes 1 MB, and a character may be up to three bytes. */
const MOST_CHARACTERS = 300_000;

/** The entries to send next: the opening first, then by time and id; as many as fit. */
export function nextBatch(entries: readonly Entry[], most: number): Entry[] {
  // Sorting keeps what is equal in its order.
  const ordered = orderEntries(entries).sort(
    (a, b) => Number(b.kind === "opened") - Number(a.kind === "opened"),
  );
  const batch: Entry[] = [];
  let characters = 0;
  for (const entry of ordered.slice(0, Math.min(most, MOST_ENTRIES))) {
    characters += JSON.stringify(entry).length;
    if (batch.length > 0 && characters > MOST_CHARACTERS) break;
    batch.push(entry);
  }
  return batch;
}
