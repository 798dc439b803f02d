"use client";
import type { Entry } from "../../../lib/case/entries.ts";
import { entryLabel } from "../../../lib/case/entry-label.ts";
import { entriesToUndo } from "../../../lib/case/undo.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import type { EntryBody } from "../../store/new-entry.ts";
import { labelWords } from "../../text/label-words.ts";

/** The last thing that was entered, and its undo, where the thumb is: a slip is put right at once. */
export function LastEntry({
  knowledge,
  entries,
  append,
}: {
  readonly knowledge: Knowledge;
  readonly entries: readonly Entry[];
  readonly append: (...bodies: readonly EntryBody[]) => void;
}) {
  const together = entriesToUndo(entries);
  const [last] = together;
  if (last === undefined) return null;
  const more = together.length > 1 ? ` and ${together.length - 1} more of this check` : "";
  const words = `${labelWords(knowledge, entryLabel(last))}${more}`;
  return (
    <div className="last-entry">
      <span className="small">
        <span className="soft">Last:</span> {words}
      </span>
      <button
        type="button"
        aria-label={`Undo the last entry: ${words}`}
        onClick={() => append(...together.map((entry) => ({ kind: "retracted", entry: entry.id }) as const))}
      >
        Undo
      </button>
    </div>
  );
}
