import type { Entry } from "./entries.ts";
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
 * The retraction that redo takes back: the newest undo that holds, when nothing was entered after it.
 */
export function retractionToRedo(entries: Iterable<Entry>, by?: string): Entry | undefined {
  const ordered = orderEntries(entries);
  const retracted = retractedIds(ordered);
  const newest = ordered.findLast(
    (entry) => !retracted.has(entry.id) && (by === undefined || entry.by === by),
  );
  return newest?.kind === "retracted" ? newest : undefined;
}
