"use client";
import Link from "next/link";
import { memo, useState } from "react";
import type { Advice } from "../../../lib/knowledge/schema/advice.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import type { CaseInList } from "../../store/use-cases.ts";
import { agoWords } from "../../text/age.ts";
import { momentWords } from "../../text/moment.ts";
import { capital, nameOfFinding, nameOfSuspect } from "../../text/names.ts";
import type { OverviewRow } from "./overview-rows.ts";
import { RemoveCase } from "./remove-case.tsx";
import { UrgencyMark, urgencyWords } from "./urgency-mark.tsx";

/** What a case says in one line: its verdict, or what is wrong. */
export function caseSummary({ state }: CaseInList, knowledge: Knowledge | undefined): string {
  if (knowledge === undefined) return "";
  if (state.verdict !== undefined)
    return `Verdict: ${state.verdict.suspects.map((id) => nameOfSuspect(knowledge, id)).join("; ")}`;
  const complaints = state.answers
    .filter((a) => a.state === "present" && knowledge.complaints.some((c) => c.id === a.finding))
    .map((a) => nameOfFinding(knowledge, a.finding));
  return complaints.length > 0 ? capital(complaints.join(", ")) : "Nothing ticked yet";
}

/** A case of the list: opens it; one that is kept here can be removed. */
export const CaseLine = memo(function CaseLine({
  row,
  levels,
  knowledge,
  now,
  marked,
  onRemove,
}: {
  readonly row: OverviewRow;
  readonly levels: Advice["levels"];
  readonly knowledge: Knowledge | undefined;
  readonly now: number;
  /** Say how urgent it is: no heading above it does. */
  readonly marked: boolean;
  readonly onRemove: (id: string) => void;
}) {
  const [asking, setAsking] = useState(false);
  const { id, here, closed, assigned, openedAt, changedAt } = row;
  const name = row.vehicle === "" ? "A car" : row.vehicle;
  return (
    <li className="case-line">
      <Link className="case-link" href={`/case?id=${encodeURIComponent(id)}`} prefetch={false}>
        <strong>{name}</strong>
        {row.invented && <span className="invented-tag">invented</span>}
        <span className="soft">{[row.plate, row.customer].filter(Boolean).join(", ")}</span>
        {here !== undefined && <span className="small">{caseSummary(here, knowledge)}</span>}
        {marked && !closed && (
          <span className="row-urgency">
            <UrgencyMark urgency={row.urgency} levels={levels} />
            {urgencyWords(row.urgency, levels)}
          </span>
        )}
        {marked && closed && <span className="small">Verdict given</span>}
        {row.problem !== undefined && !closed && (
          <span className="small">It could not be worked out: {row.problem}</span>
        )}
        {row.busy && !closed && <span className="small soft">Being worked out with the newest answers</span>}
        <span className="small">{assigned === undefined ? "Nobody has it" : `${assigned.name} has it`}</span>
        <span className="small soft number">
          opened{" "}
          <time dateTime={openedAt} title={momentWords(openedAt)}>
            {agoWords(openedAt, now)}
          </time>
          , last entry{" "}
          <time dateTime={changedAt} title={momentWords(changedAt)}>
            {agoWords(changedAt, now)}
          </time>
        </span>
      </Link>
      {here !== undefined &&
        (asking ? (
          <RemoveCase item={here} name={name} onRemove={onRemove} onKeep={() => setAsking(false)} />
        ) : (
          <button
            type="button"
            className="plain"
            aria-label={`Remove ${name}`}
            onClick={() => setAsking(true)}
          >
            Remove
          </button>
        ))}
    </li>
  );
});
