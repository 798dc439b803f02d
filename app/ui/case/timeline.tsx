"use client";
import type { CaseState } from "../../../lib/case/case-state.ts";
import { exportCase } from "../../../lib/case/export.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import type { EntryBody } from "../../store/new-entry.ts";
import { momentWords } from "../../text/moment.ts";
import { labelWords } from "../../text/label-words.ts";
import { saveFile } from "../save-file.ts";

/** Hands the whole case to the browser as a file. */
function saveCopy(state: CaseState): void {
  const text = exportCase(state.timeline.map((item) => item.entry));
  saveFile(`case-${state.caseId.slice(0, 8)}.json`, text, "application/json");
}

/** Every entry with its time, newest first; each can be taken back, and a taking back as well. */
export function Timeline({
  knowledge,
  state,
  append,
}: {
  readonly knowledge: Knowledge;
  readonly state: CaseState;
  /** Left out: the case can be read and not changed. */
  readonly append?: (...bodies: readonly EntryBody[]) => void;
}) {
  return (
    <>
      {append !== undefined && (
        <p className="small soft">
          Saved on this device the moment it is entered, with or without a network.
        </p>
      )}
      <button type="button" onClick={() => saveCopy(state)}>
        Save a copy as a file
      </button>
      <ol className="timeline" reversed>
        {state.timeline.toReversed().map((item) => {
          const { entry } = item;
          const words = labelWords(knowledge, item.label);
          const canUndo = !item.retracted && !item.ignored && entry.kind !== "opened";
          const undoes = entry.kind === "retracted";
          return (
            <li key={entry.id} className={item.retracted ? "taken-back" : undefined}>
              <time className="small soft number" dateTime={entry.at}>
                {momentWords(entry.at)}
              </time>
              <span className="entry-words">
                {item.retracted ? <s>{words}</s> : words}
                {item.retracted && <span className="small"> (taken back)</span>}
              </span>
              {canUndo && append !== undefined && (
                <button
                  type="button"
                  className="plain"
                  aria-label={`${undoes ? "Bring back what was undone" : "Undo"}: ${words}`}
                  onClick={() => append({ kind: "retracted", entry: entry.id })}
                >
                  {undoes ? "Bring back" : "Undo"}
                </button>
              )}
            </li>
          );
        })}
      </ol>
    </>
  );
}
