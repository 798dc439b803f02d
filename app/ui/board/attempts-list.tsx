"use client";
import Link from "next/link";
import { useState } from "react";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { minutesWords } from "../../text/amounts.ts";
import { momentWords } from "../../text/moment.ts";
import { nameOfCheck, nameOfRepair } from "../../text/names.ts";
import type { AttemptsReply, BoardAttempt } from "./replies.ts";
import { shareWords } from "./tally-table.tsx";

/** Attempts, the last begun first; each leads to its debrief. */
export function AttemptsList({
  list,
  knowledge,
  onMore,
}: {
  readonly list: AttemptsReply;
  readonly knowledge: Knowledge | undefined;
  readonly onMore: () => Promise<void>;
}) {
  const [busy, setBusy] = useState(false);
  const more = async (): Promise<void> => {
    setBusy(true);
    await onMore();
    setBusy(false);
  };
  return (
    <>
      <ul className="plain-list">
        {list.attempts.map((attempt) => (
          <li key={attempt.id} className="case-line">
            <Link
              className="case-link"
              href={`/exercise/debrief?id=${encodeURIComponent(attempt.id)}`}
              prefetch={false}
            >
              <strong>{attempt.trainee.name}</strong>
              <span>
                {attempt.exercise.name}
                {attempt.course !== null && <span className="soft">, {attempt.course}</span>}
              </span>
              {linesOf(attempt, knowledge).map((line) => (
                <span key={line} className="small">
                  {line}
                </span>
              ))}
              <span className="small soft number">begun {momentWords(attempt.startedAt)}</span>
            </Link>
          </li>
        ))}
      </ul>
      {list.next !== null && (
        <button type="button" disabled={busy} onClick={() => void more()}>
          {busy ? "Looking ..." : "Show older ones"}
        </button>
      )}
    </>
  );
}

function linesOf(attempt: BoardAttempt, knowledge: Knowledge | undefined): string[] {
  const { score, checks, confidence } = attempt;
  if (score === null) return [`Still at work, ${checks} ${checks === 1 ? "check" : "checks"} made`];
  const named =
    score.right === true
      ? "Right part at its place"
      : score.rightPart === true
        ? "Right part, wrong place"
        : "Not found";
  const sure = confidence === null ? "" : `, ${shareWords(confidence)} sure`;
  const brier = score.brier === undefined ? "" : `, Brier ${score.brier.toFixed(2)}`;
  const names = (ids: readonly string[], name: (known: Knowledge, id: string) => string): string =>
    ids.map((id) => (knowledge === undefined ? id : name(knowledge, id))).join("; ");
  return [
    `${named}${sure}${brier}`,
    `${minutesWords(score.minutes)} on the ramp, the best way ${minutesWords(score.bestMinutes)}; ${minutesWords(score.lostMinutes)} lost`,
    ...(score.unsafe.length > 0 ? [`Dangerous as things stood: ${names(score.unsafe, nameOfCheck)}`] : []),
    ...(score.cautionsSkipped.length > 0
      ? [`Cautions not read: ${names(score.cautionsSkipped, nameOfCheck)}`]
      : []),
    ...(score.wrongParts.length > 0
      ? [`In order, but named or ordered: ${names(score.wrongParts, nameOfRepair)}`]
      : []),
    ...(score.jumped ? ["Jumped to the verdict before it was proven"] : []),
  ];
}
