"use client";
import { type RefObject, useId, useState } from "react";
import type { CaseState } from "../../../lib/case/case-state.ts";
import type { DriveAdvice } from "../../../lib/engine/index.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import type { Booked } from "../../engine/protocol.ts";
import type { EntryBody } from "../../store/new-entry.ts";
import { useDraft } from "../../store/use-draft.ts";
import { hoursWords } from "../../text/amounts.ts";
import { Choice } from "../choice.tsx";
import { SafetyWord } from "./safety-word.tsx";
import { ENOUGH_VISITS } from "./use-booking.ts";

/** The decision of a person: what is said about driving, with what was worked out beside it. */
export function AdviseForm({
  ref,
  knowledge,
  state,
  drive,
  busy,
  booked,
  parts,
  append,
  onRecorded,
}: {
  readonly ref: RefObject<HTMLFormElement | null>;
  readonly knowledge: Knowledge;
  readonly state: CaseState;
  readonly drive: DriveAdvice;
  /** What is shown does not hold for the answers as they stand: it must not be recorded beside them. */
  readonly busy: boolean;
  readonly booked: Booked | undefined;
  readonly parts: readonly string[];
  readonly append: (...bodies: readonly EntryBody[]) => void;
  readonly onRecorded: () => void;
}) {
  const levels = knowledge.advice?.levels ?? [];
  const [picked, setPicked] = useState(drive.level);
  const level = levels.find((one) => one.id === picked);
  const [own, setOwn, ready] = useDraft(`${state.caseId}/advise-said/${picked}`);
  const [note, setNote] = useDraft(`${state.caseId}/advise-note`);
  const id = useId();
  const said = own === "" ? (level?.say ?? drive.say) : own;
  const place = (one: string): number => levels.findIndex((l) => l.id === one);
  const milder = place(picked) > place(drive.level);
  const unexplained = milder && note.trim() === "";
  const time =
    booked !== undefined && booked.booking.visits >= ENOUGH_VISITS ? booked.booking.whole : undefined;

  const stuck = !ready || busy || unexplained || said.trim() === "";

  const record = () => {
    if (stuck) return;
    append({
      kind: "advised",
      level: picked,
      said: said.trim().slice(0, 4000),
      ...(time !== undefined && { p50: Math.round(time.p50), p90: Math.round(time.p90) }),
      parts: parts.slice(0, 50),
      ...(note.trim() !== "" && { note: note.trim().slice(0, 4000) }),
    });
    setOwn("");
    setNote("");
    onRecorded();
  };

  return (
    <form
      ref={ref}
      className="advise"
      onSubmit={(event) => {
        event.preventDefault();
        record();
      }}
    >
      <h3>What you decide</h3>
      <Choice
        id="advise-level"
        label="About driving"
        value={picked}
        options={levels.map((one) => ({ value: one.id, name: one.name }))}
        onChange={setPicked}
      />
      <label htmlFor={`${id}-said`}>What you say</label>
      <textarea
        id={`${id}-said`}
        className="low"
        rows={3}
        maxLength={4000}
        value={said}
        disabled={!ready}
        onChange={(event) => setOwn(event.target.value)}
      />
      <SafetyWord text={said} />
      <label htmlFor={`${id}-note`}>{milder ? "Why milder than worked out?" : "Note (optional)"}</label>
      <textarea
        id={`${id}-note`}
        className="low"
        rows={2}
        maxLength={4000}
        value={note}
        aria-required={milder}
        onChange={(event) => setNote(event.target.value)}
      />
      {unexplained && (
        <p className="trouble">
          What is worked out is graver: {drive.name}. Say in the note why you decide otherwise.
        </p>
      )}
      <p className="small soft number">
        {time === undefined
          ? "The time to book is not known well enough yet and is left out."
          : `Noted with it: half within ${hoursWords(time.p50)}, nine of ten within ${hoursWords(time.p90)}; ${
              parts.length === 0 ? "no parts" : `${parts.length} ${parts.length === 1 ? "part" : "parts"}`
            } to have ready.`}
      </p>
      <button type="submit" className="main wide" disabled={stuck}>
        Record the decision <kbd>Ctrl + Enter</kbd>
      </button>
    </form>
  );
}
