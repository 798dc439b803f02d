"use client";
import Link from "next/link";
import { useState } from "react";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import type { CaseInList } from "../../store/use-cases.ts";
import { momentWords } from "../../text/moment.ts";
import { capital, nameOfFinding, nameOfSuspect } from "../../text/names.ts";
import { RemoveCase } from "./remove-case.tsx";

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

/** A case of this device: opens it, or removes it. */
export function CaseLine({
  item,
  knowledge,
  onRemove,
}: {
  readonly item: CaseInList;
  readonly knowledge: Knowledge | undefined;
  readonly onRemove: (id: string) => void;
}) {
  const [asking, setAsking] = useState(false);
  const { state } = item;
  const name = state.vehicle === "" ? "A car" : state.vehicle;
  return (
    <li className="case-line">
      <Link className="case-link" href={`/case?id=${encodeURIComponent(item.id)}`}>
        <strong>{name}</strong>
        {state.invented && <span className="invented-tag">invented</span>}
        <span className="soft">{[state.plate, state.customer].filter(Boolean).join(", ")}</span>
        <span className="small">{caseSummary(item, knowledge)}</span>
        <span className="small soft number">last entry {momentWords(item.lastAt)}</span>
      </Link>
      {asking ? (
        <RemoveCase item={item} name={name} onRemove={onRemove} onKeep={() => setAsking(false)} />
      ) : (
        <button type="button" className="plain" aria-label={`Remove ${name}`} onClick={() => setAsking(true)}>
          Remove
        </button>
      )}
    </li>
  );
}
