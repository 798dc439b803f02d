"use client";
import { useId } from "react";
import type { CaseState } from "../../../lib/case/case-state.ts";
import type { EntryBody } from "../../store/new-entry.ts";
import { useDraft } from "../../store/use-draft.ts";
import { SheetPart } from "../sheet-part.tsx";
import { NotesList } from "./notes-list.tsx";

/** Notes of the case. */
export function NotesPart({
  state,
  append,
}: {
  readonly state: CaseState;
  readonly append: (...bodies: readonly EntryBody[]) => void;
}) {
  const [text, setText, ready] = useDraft(`${state.caseId}/note`);
  const id = useId();
  const trimmed = text.trim();
  return (
    <SheetPart id="notes" title="Notes">
      <NotesList notes={state.notes} />
      <form
        onSubmit={(event) => {
          event.preventDefault();
          if (trimmed === "") return;
          append({ kind: "note", text: trimmed.slice(0, 4000) });
          setText("");
        }}
      >
        <label htmlFor={id}>Add a note</label>
        <textarea
          id={id}
          className="low"
          rows={2}
          maxLength={4000}
          value={text}
          disabled={!ready}
          onChange={(event) => setText(event.target.value)}
        />
        <button type="submit" className="wide" disabled={trimmed === ""}>
          Save the note
        </button>
      </form>
    </SheetPart>
  );
}
