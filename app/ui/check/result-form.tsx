"use client";
import { startTransition, useRef } from "react";
import type { EntryBody } from "../../store/new-entry.ts";
import { useDraft } from "../../store/use-draft.ts";
import { forgetKept, useKept } from "../../store/use-kept.ts";
import { afterPaint } from "../after-paint.ts";
import type { CheckProps } from "./check-props.ts";
import { ResultEntry } from "./result-entry.tsx";
import { type Result, type Results, resultsOfDraft } from "./result.ts";

/** What was found or answered; results of several findings are gathered and saved together. */
export function ResultForm({ knowledge, state, proposed, settings, append, onDone }: CheckProps) {
  const findings = proposed.settles.map((s) => s.finding);
  const [draft, setDraft, ready] = useDraft(`${state.caseId}/results/${proposed.id}`);
  const keptAs = `${state.caseId}/result/${proposed.id}`;
  const [seen, setSeen] = useKept(`${keptAs}/seen`, false);
  // A second tap before the first is painted is no second answer.
  const saving = useRef(false);
  const results = resultsOfDraft(draft, findings);
  const question = proposed.kind === "question";
  const single = findings.length === 1;
  const remote = settings.asker === "owner" || settings.asker === "driver";
  const how = question ? (seen ? "check" : "report") : remote ? "report" : "check";

  const save = (given: Results) => {
    const answers = Object.entries(given).map(
      ([finding, { state, level, value }]): EntryBody => ({
        kind: "answered",
        finding,
        state,
        how,
        ...(level !== undefined && { level }),
        ...(value !== undefined && { value }),
        ...(!question && { check: proposed.id }),
      }),
    );
    const start = knowledge.setUps.start;
    const moved = !question && !remote && (state.setUp ?? start) !== proposed.setUp;
    // The car was moved before the check was made: so undo meets the answers first.
    if (saving.current) return;
    saving.current = true;
    // The tap is painted before the whole sheet is.
    afterPaint(() => {
      saving.current = false;
      startTransition(() => {
        append(...(moved ? [{ kind: "set-up", setUp: proposed.setUp } as const] : []), ...answers);
        setDraft("");
        forgetKept(keptAs);
        onDone();
      });
    });
  };
  const give = (finding: string, result: Result) => {
    if (single && result.value === undefined) save({ [finding]: result });
    else setDraft(JSON.stringify({ ...results, [finding]: result }));
  };
  const given = Object.keys(results).length;
  return (
    <div className="results" id="results">
      <h3>{question ? "Answer" : "What did you find?"}</h3>
      {question && (
        <label className="tick">
          <input type="checkbox" checked={seen} onChange={(event) => setSeen(event.target.checked)} />
          Noticed at the car, not only told
        </label>
      )}
      {!single && (
        <button
          type="button"
          className="wide"
          onClick={() => save(Object.fromEntries(findings.map((f) => [f, { state: "absent" }])))}
        >
          All normal: nothing of this was found
        </button>
      )}
      {proposed.settles.map((settled) => (
        <ResultEntry
          key={settled.finding}
          knowledge={knowledge}
          settled={settled}
          place={proposed.place}
          result={results[settled.finding]}
          question={question}
          units={settings}
          keptAs={keptAs}
          onResult={(result) => give(settled.finding, result)}
        />
      ))}
      {(!single || given > 0) && (
        <button
          type="button"
          className="main wide"
          disabled={!ready || given === 0}
          onClick={() => save(results)}
        >
          {given === 0 ? "Save the result" : `Save ${given} of ${findings.length}`}
        </button>
      )}
    </div>
  );
}
