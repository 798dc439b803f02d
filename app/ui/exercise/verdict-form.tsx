"use client";
import { useId, useMemo } from "react";
import type { Grounded } from "../../../lib/engine/index.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { useDraft } from "../../store/use-draft.ts";
import { useKept } from "../../store/use-kept.ts";
import { typedNumber } from "../../text/amounts.ts";
import { capital, nameOfSuspect } from "../../text/names.ts";
import { PickList } from "../teach/pick-list.tsx";
import { faultsOf } from "./suspect-names.ts";
import type { AttemptAtWork, OpenAttempt } from "./use-attempt.ts";

const PICKS = ["50", "60", "70", "80", "90", "99"];
const MOST_LISTED = 6;

/** Names the fault and how sure the trainee is of it, before anything is known. */
export function VerdictForm({
  knowledge,
  grounded,
  attempt,
  work,
  leaders,
}: {
  readonly knowledge: Knowledge;
  readonly grounded: Grounded;
  readonly attempt: OpenAttempt;
  readonly work: AttemptAtWork;
  /** Suspects to pick from without looking for them; none where the ranking is hidden. */
  readonly leaders: readonly string[];
}) {
  const faults = useMemo(() => faultsOf(grounded), [grounded]);
  const [chosen, setChosen] = useKept<readonly string[]>(`${attempt.id}/named`, []);
  const [typed, setTyped] = useDraft(`${attempt.id}/confidence`);
  const [note, setNote] = useDraft(`${attempt.id}/exercise-note`);
  const id = useId();
  const percent = typedNumber(typed.replace("%", ""));
  const sure = percent !== undefined && percent >= 0 && percent <= 100 ? percent / 100 : undefined;
  const toggle = (suspect: string): void =>
    setChosen(chosen.includes(suspect) ? chosen.filter((c) => c !== suspect) : [...chosen, suspect]);
  const listed = [...new Set([...chosen, ...leaders.slice(0, MOST_LISTED)])];
  const give = async (): Promise<void> => {
    if (sure === undefined) return;
    const words = note.trim().slice(0, 4000);
    await work.send({
      kind: "verdict",
      suspects: chosen,
      confidence: sure,
      ...(words !== "" && { note: words }),
    });
  };
  return (
    <form
      className="verdict-form"
      method="post"
      onSubmit={(event) => {
        event.preventDefault();
        void give();
      }}
    >
      <fieldset>
        <legend>Which fault is behind the complaint? More than one may be.</legend>
        {listed.map((suspect) => (
          <label key={suspect} className="tick">
            <input type="checkbox" checked={chosen.includes(suspect)} onChange={() => toggle(suspect)} />
            <span>{capital(nameOfSuspect(knowledge, suspect))}</span>
          </label>
        ))}
      </fieldset>
      <PickList label="Look for a fault by part, place or what is wrong" things={faults}>
        {(fault) => (
          <button type="button" aria-pressed={chosen.includes(fault.id)} onClick={() => toggle(fault.id)}>
            {chosen.includes(fault.id) ? "Named" : "Name it"}
          </button>
        )}
      </PickList>
      <fieldset>
        <legend>How sure are you that it is right?</legend>
        <div className="row">
          {PICKS.map((pick) => (
            <button key={pick} type="button" aria-pressed={typed === pick} onClick={() => setTyped(pick)}>
              {pick} %
            </button>
          ))}
        </div>
        <label htmlFor={`${id}-sure`}>Or typed, from 0 to 100 (%)</label>
        <input
          id={`${id}-sure`}
          inputMode="decimal"
          autoComplete="off"
          maxLength={8}
          value={typed}
          aria-invalid={typed.trim() !== "" && sure === undefined}
          onChange={(event) => setTyped(event.target.value)}
        />
      </fieldset>
      <label htmlFor={`${id}-note`}>What proves it (optional)</label>
      <textarea
        id={`${id}-note`}
        className="low"
        rows={2}
        maxLength={4000}
        value={note}
        onChange={(event) => setNote(event.target.value)}
      />
      <p className="small soft">
        {chosen.length === 0 && "No fault is named yet: you may end without one. "}
        {sure === undefined && "Say how sure you are. "}
        The verdict ends the exercise.
      </p>
      {work.trouble !== undefined && (
        <p className="trouble" role="alert">
          {work.trouble}
        </p>
      )}
      <button type="submit" className="main wide" disabled={sure === undefined || work.busy}>
        {chosen.length === 0 ? "End without naming a fault" : "Give the verdict"}
      </button>
    </form>
  );
}
