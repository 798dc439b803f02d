"use client";
import Link from "next/link";
import { useId } from "react";
import type { CaseState } from "../../../lib/case/case-state.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import type { Ranked } from "../../engine/protocol.ts";
import type { EntryBody } from "../../store/new-entry.ts";
import { useDraft } from "../../store/use-draft.ts";
import { useKept } from "../../store/use-kept.ts";
import { percent } from "../../text/chance-words.ts";
import { momentWords } from "../../text/moment.ts";
import { capital, nameOfFinding, nameOfSuspect } from "../../text/names.ts";
import { decisiveFindings, supportingFindings } from "./proof.ts";

interface Props {
  readonly knowledge: Knowledge;
  readonly state: CaseState;
  readonly ranked: Ranked;
  readonly append: (...bodies: readonly EntryBody[]) => void;
}

/** The verdict that stands, or the form to give one. */
export function VerdictPart(props: Props) {
  const { state, append } = props;
  if (state.verdict === undefined) return <VerdictForm {...props} />;
  return (
    <>
      <p className="small soft">Given {momentWords(state.verdict.at)}</p>
      <ul>
        {state.verdict.suspects.map((id) => (
          <li key={id}>
            <strong>{capital(nameOfSuspect(props.knowledge, id))}</strong>
          </li>
        ))}
        {state.verdict.suspects.length === 0 && <li>No part named.</li>}
      </ul>
      {state.verdict.note !== undefined && <p className="note">{state.verdict.note}</p>}
      <div className="row">
        <Link className="button main" href={`/case/card?id=${encodeURIComponent(state.caseId)}`}>
          Open the job card
        </Link>
        <button type="button" onClick={() => append({ kind: "reopened" })}>
          Reopen the case
        </button>
      </div>
    </>
  );
}

function VerdictForm({ knowledge, state, ranked, append }: Props) {
  const leading = ranked.proven.length > 0 ? ranked.proven : ranked.leaders.slice(0, 1).map((l) => l.id);
  const [picks, setPicks] = useKept<readonly string[] | undefined>(`${state.caseId}/verdict`, undefined);
  const [note, setNote] = useDraft(`${state.caseId}/verdict-note`);
  const id = useId();
  const chosen = picks ?? leading;
  const listed = [
    ...ranked.leaders.slice(0, 8),
    ...ranked.leaders.slice(8).filter((l) => chosen.includes(l.id) || l.proven),
  ];
  const decisive = decisiveFindings(knowledge, state, chosen);
  const proof = [...new Set([...decisive, ...supportingFindings(knowledge, state, chosen)])];
  const bare = chosen.filter((s) => decisiveFindings(knowledge, state, [s]).length === 0);
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        const trimmed = note.trim().slice(0, 4000);
        append({
          kind: "verdict",
          suspects: [...chosen],
          proof: proof.slice(0, 100),
          ...(trimmed !== "" && { note: trimmed }),
        });
        setNote("");
        setPicks(undefined);
      }}
    >
      <fieldset>
        <legend>Which fault is it? More than one may be.</legend>
        {listed.map((leader) => (
          <label key={leader.id} className="tick">
            <input
              type="checkbox"
              checked={chosen.includes(leader.id)}
              onChange={(event) =>
                setPicks(
                  event.target.checked ? [...chosen, leader.id] : chosen.filter((c) => c !== leader.id),
                )
              }
            />
            <span>
              {capital(leader.name)} <span className="soft number">{percent(leader.explains)}</span>
              {leader.proven && <strong> proven by hand</strong>}
            </span>
          </label>
        ))}
      </fieldset>
      {proof.length > 0 && (
        <>
          <h3>What speaks for it</h3>
          <ul>
            {proof.map((finding) => (
              <li key={finding}>
                {capital(nameOfFinding(knowledge, finding))}
                {decisive.includes(finding) && <strong> - this proves it</strong>}
              </li>
            ))}
          </ul>
        </>
      )}
      {bare.length > 0 && (
        <p className="notice">
          <strong>Not proven:</strong> nothing decisive was found by hand for{" "}
          {bare.map((s) => nameOfSuspect(knowledge, s)).join("; ")}. A part ordered now may be the wrong one.
          See how it is proven in the ranking.
        </p>
      )}
      <label htmlFor={id}>Note (optional)</label>
      <textarea
        id={id}
        className="low"
        rows={2}
        value={note}
        onChange={(event) => setNote(event.target.value)}
      />
      <button type="submit" className="main wide" disabled={chosen.length === 0}>
        Give the verdict
      </button>
    </form>
  );
}
