import type { Entry, EntryOf } from "./entries.ts";
import { orderEntries } from "./order-entries.ts";
import { retractedIds } from "./retracted-ids.ts";

/**
 * The entry that undo takes back: the newest that still has effect.
 *
 * Shape   by: only entries of that person when given. Undefined when there is nothing to undo.
 *         The opening is never undone. Retractions are passed over, so that undoing again goes further back.
 */
export function entryToUndo(entries: Iterable<Entry>, by?: string): Entry | undefined {
  const ordered = orderEntries(entries);
  const retracted = retractedIds(ordered);
  return ordered.findLast(
    (entry) =>
      entry.kind !== "opened" &&
      entry.kind !== "retracted" &&
      !retracted.has(entry.id) &&
      (by === undefined || entry.by === by),
  );
}

/**
 * The retraction that redo takes back: the newest undo that holds.
 *
 * Shape   undefined when nothing was undone, or something was entered since.
 */
export function retractionToRedo(entries: Iterable<Entry>, by?: string): Entry | undefined {
  const all = orderEntries(entries);
  const retracted = retractedIds(all);
  const ordered = all.filter((entry) => by === undefined || entry.by === by);
  const kinds = new Map(all.map((entry) => [entry.id, entry.kind]));
  const newest = ordered.findLast(
    // A retraction of a retraction is a redo: passed over, as redo again goes further back.
    (entry) => !retracted.has(entry.id) && !(isRetraction(entry) && kinds.get(entry.entry) === "retracted"),
  );
  return newest?.kind === "retracted" ? newest : undefined;
}

function isRetraction(entry: Entry): entry is EntryOf<"retracted"> {
  return entry.kind === "retracted";
}
