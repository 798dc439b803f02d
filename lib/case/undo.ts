import { type Entry, type EntryOf, isByForm } from "./entries.ts";
import { orderEntries } from "./order-entries.ts";
import { retractedIds } from "./retracted-ids.ts";

/**
 * The entry that undo takes back: the newest that still has effect.
 *
 * Shape   by: only entries of that person when given. Undefined when there is nothing to undo.
 *         The opening is never undone. Retractions are passed over, so that undoing again goes further back. So is what
 *         the customer gives by a form: it comes in while somebody works, and is not the slip that they mean.
 */
export function entryToUndo(entries: Iterable<Entry>, by?: string): Entry | undefined {
  const ordered = orderEntries(entries);
  const retracted = retractedIds(ordered);
  return ordered.findLast(
    (entry) =>
      entry.kind !== "opened" &&
      entry.kind !== "retracted" &&
      !isByForm(entry) &&
      !retracted.has(entry.id) &&
      (by === undefined || entry.by === by),
  );
}

/** Answers that one tap gave stand within this many milliseconds of one another. */
const ONE_TAP = 1000;

/**
 * The entries that one undo takes back: the newest that still has effect and, when it answers a check, the other answers
 * that the same person gave to the same check in the same tap. Newest first; empty when there is nothing to undo.
 */
export function entriesToUndo(entries: Iterable<Entry>, by?: string): Entry[] {
  const ordered = orderEntries(entries);
  const newest = entryToUndo(ordered, by);
  if (newest === undefined) return [];
  const check = answered(newest)?.check;
  if (check === undefined) return [newest];
  const retracted = retractedIds(ordered);
  return ordered
    .filter(
      (entry) =>
        answered(entry)?.check === check &&
        entry.by === newest.by &&
        !retracted.has(entry.id) &&
        Date.parse(newest.at) - Date.parse(entry.at) <= ONE_TAP,
    )
    .toReversed();
}

function answered(entry: Entry): EntryOf<"answered"> | undefined {
  return entry.kind === "answered" ? (entry as EntryOf<"answered">) : undefined;
}

/**
 * The retraction that redo takes back: the newest undo that holds.
 *
 * Shape   undefined when nothing was undone, or something was entered since.
 */
export function retractionToRedo(entries: Iterable<Entry>, by?: string): Entry | undefined {
  const all = orderEntries(entries);
  const retracted = retractedIds(all);
  const ordered = all.filter((entry) => !isByForm(entry) && (by === undefined || entry.by === by));
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
