"use client";
import { useId, useState } from "react";
import type { CaseState } from "../../../lib/case/case-state.ts";
import type { ProposedCheck } from "../../../lib/engine/index.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import type { Ranked, Situation } from "../../engine/protocol.ts";
import type { EntryBody } from "../../store/new-entry.ts";
import { useDraft } from "../../store/use-draft.ts";
import type { Settings } from "../../store/use-settings.ts";
import { minutesWords } from "../../text/amounts.ts";
import { capital, nameOfPlace, nameOfSetUp } from "../../text/names.ts";
import { Fold } from "../fold.tsx";
import { whyForbidden } from "./forbidden.ts";
import { Previews } from "./previews.tsx";
import { ResultEntry } from "./result-entry.tsx";
import { type Result, type Results, resultsOfDraft } from "./result.ts";

interface Props {
  readonly knowledge: Knowledge;
  readonly state: CaseState;
  readonly proposed: ProposedCheck;
  readonly situation: Situation;
  readonly notices: Ranked["notices"];
  readonly settings: Settings;
  readonly append: (...bodies: readonly EntryBody[]) => void;
  /** The check was answered or put aside; show the next one. */
  readonly onDone: () => void;
}

const WHO = {
  owner: "the owner can do it",
  driver: "the driver can do it",
  technician: "a technician",
} as const;

/** One check or question: what it takes, cautions, steps, what it would tell, and its result. */
export function CheckCard(props: Props) {
  const { knowledge, state, notices, proposed, situation } = props;
  const { check, place } = proposed;
  const forbidden = check && whyForbidden(knowledge, state, notices, check, place);
  if (forbidden !== undefined)
    return (
      <div className="check">
        <p className="check-name" id="open-check" tabIndex={-1}>
          {capital(proposed.name)}
        </p>
        <p className="trouble">
          <strong>{forbidden}</strong>
        </p>
      </div>
    );
  return (
    <div className="check">
      <CheckHead {...props} />
      <ResultForm {...props} />
      <Fold className="what-it-tells" openAtFirst title="What each result would tell">
        <Previews knowledge={knowledge} proposed={proposed} situation={situation} />
      </Fold>
      {proposed.kind === "check" && <CannotBeDone {...props} />}
    </div>
  );
}

function CheckHead({ knowledge, state, proposed, append }: Props) {
  const { check } = proposed;
  if (check === undefined)
    return (
      <p className="check-name" id="open-check" tabIndex={-1}>
        Ask: {proposed.name}
      </p>
    );
  const cautions = check.cautions.flatMap((id) => knowledge.cautions.filter((c) => c.id === id));
  const read = state.cautionsRead.includes(proposed.id);
  return (
    <>
      <p className="check-name" id="open-check" tabIndex={-1}>
        {capital(proposed.name)}
        {check.places.length > 1 && (
          <>
            , <strong>{nameOfPlace(knowledge, proposed.place)}</strong>
          </>
        )}
      </p>
      <dl className="takes">
        <div>
          <dt>Takes</dt>
          <dd>
            {minutesWords(proposed.minutes)}
            {proposed.setUpMinutes > 0 && ` + ${minutesWords(proposed.setUpMinutes)} to set up`}
          </dd>
        </div>
        <div>
          <dt>Car</dt>
          <dd>{nameOfSetUp(knowledge, proposed.setUp)}</dd>
        </div>
        <div>
          <dt>Who</dt>
          <dd>
            {WHO[check.who]}
            {check.helper && ", with a helper"}
          </dd>
        </div>
        <div>
          <dt>Tools</dt>
          <dd>{check.tools.length === 0 ? "none" : check.tools.join(", ")}</dd>
        </div>
      </dl>
      {cautions.length > 0 && (
        <div className="cautions" role="group" aria-label="Cautions">
          <h3>Before you start</h3>
          <ul>
            {cautions.map((caution) => (
              <li key={caution.id}>{caution.text}</li>
            ))}
          </ul>
          {read ? (
            <p className="small">Read and noted in the case.</p>
          ) : (
            <button type="button" onClick={() => append({ kind: "cautions-read", check: proposed.id })}>
              I have read this
            </button>
          )}
        </div>
      )}
      <h3>Steps</h3>
      <ol className="steps">
        {check.steps.map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
      <p>
        <strong>Normal:</strong> {check.normal}
      </p>
    </>
  );
}

function ResultForm({ knowledge, state, proposed, settings, append, onDone }: Props) {
  const findings = proposed.settles.map((s) => s.finding);
  const [draft, setDraft, ready] = useDraft(`${state.caseId}/results/${proposed.id}`);
  const [seen, setSeen] = useState(false);
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
    append(...answers, ...(moved ? [{ kind: "set-up", setUp: proposed.setUp } as const] : []));
    setDraft("");
    onDone();
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

function CannotBeDone({ state, proposed, append, onDone }: Props) {
  const [reason, setReason] = useState("");
  const id = useId();
  const already = state.notPossible.some((n) => n.check === proposed.id);
  return (
    <Fold title="Cannot be done">
      <form
        onSubmit={(event) => {
          event.preventDefault();
          append({ kind: "not-possible", check: proposed.id, reason: reason.trim().slice(0, 200) });
          onDone();
        }}
      >
        <label htmlFor={id}>Why not?</label>
        <input id={id} value={reason} maxLength={200} onChange={(event) => setReason(event.target.value)} />
        <button type="submit" className="wide">
          {already ? "Note it again" : "Put this check aside"}
        </button>
      </form>
    </Fold>
  );
}
