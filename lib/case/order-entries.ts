import { canonicalJson } from "../knowledge/canonical.ts";
import type { Entry } from "./entries.ts";

/** Order by code units, the same in every language setting. */
function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

function compareEntries(a: Entry, b: Entry): number {
  return compareText(a.at, b.at) || compareText(a.id, b.id);
}

/** Which of two entries under one id is kept; the same whichever arrived first. */
function keptOf(a: Entry, b: Entry): Entry {
  const order = compareText(a.at, b.at) || compareText(canonicalJson(a), canonicalJson(b));
  return order <= 0 ? a : b;
}

/**
 * The entries once each, by time and then by id.
 *
 * Two different entries under one id should not happen; the earlier one is kept, then the first as text, so that every
 * device keeps the same one.
 */
export function orderEntries(entries: Iterable<Entry>): Entry[] {
  const byId = new Map<string, Entry>();
  for (const entry of entries) {
    const other = byId.get(entry.id);
    byId.set(entry.id, other === undefined ? entry : keptOf(other, entry));
  }
  return [...byId.values()].sort(compareEntries);
}
