"use client";
import Link from "next/link";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { minutesWords } from "../../text/amounts.ts";
import { percent } from "../../text/chance-words.ts";
import { brierWords, doneWords, verdictWords } from "../../text/debrief-words.ts";
import { momentWords } from "../../text/moment.ts";
import { capital, nameOfCheck, nameOfRepair, nameOfSuspect } from "../../text/names.ts";
import { Fact } from "../fact.tsx";
import { Fold } from "../fold.tsx";
import { SheetPart } from "../sheet-part.tsx";
import { SiteHead } from "../site-head.tsx";
import { DebriefSteps } from "./debrief-steps.tsx";
import { CheckDone } from "./made-list.tsx";
import type { DebriefReply } from "./replies.ts";

interface Props {
  readonly knowledge: Knowledge;
  readonly reply: DebriefReply;
}

/** How an attempt went: what was wrong with the car, the score, and each step beside what would have told more. */
export function DebriefSheet({ knowledge, reply }: Props) {
  const { attempt, exercise, debrief } = reply;
  const trainee = attempt.trainee.name;
  return (
    <>
      <SiteHead />
      <main id="main" className="sheet list-sheet">
        <h1>{exercise.name}</h1>
        <p className="invented">
          <strong>Exercise.</strong> Invented car, customer and fault. Worked by {trainee}, begun{" "}
          {momentWords(attempt.startedAt)}.
        </p>
        {attempt.endedAt === null && (
          <p className="notice">
            <strong>Not ended yet.</strong> What follows gives the fault away: keep it from {trainee}.
          </p>
        )}
        <SheetPart id="answer" title="What was wrong">
          <ul>
            {exercise.hidden.faults.map(({ fault, place, causes }) => (
              <li key={`${fault}@${place}`}>
                <strong>{capital(nameOfSuspect(knowledge, `${fault}@${place}`))}</strong>
                {causes ? ": behind the complaint" : ": there too, but not behind the complaint"}
              </li>
            ))}
          </ul>
        </SheetPart>
        <SheetPart id="score" title="How it went">
          <ScoreFacts knowledge={knowledge} reply={reply} />
        </SheetPart>
        <SheetPart id="steps" title="Step by step">
          {debrief.atStart !== undefined && (
            <p>
              On the words alone the likeliest was: {nameOfRepair(knowledge, debrief.atStart.repair)},{" "}
              {percent(debrief.atStart.chance)}.
            </p>
          )}
          <DebriefSteps knowledge={knowledge} steps={debrief.steps} />
          {debrief.left !== undefined && debrief.score.jumped && (
            <p className="notice">
              At the end, {doneWords(knowledge, debrief.left.id)} ({minutesWords(debrief.left.minutes)}) would
              still have been worth its minutes.
            </p>
          )}
        </SheetPart>
        <SheetPart id="best" title="What the reasoning would have done">
          <p>
            From the same words, on the same car: {minutesWords(debrief.score.bestMinutes)}. It did not know
            the fault either.
          </p>
          <Fold title={`Its ${debrief.bestWay.length} steps`}>
            <ol>
              {debrief.bestWay.map(({ id, minutes, found }) => (
                <li key={id}>
                  <CheckDone knowledge={knowledge} step={{ check: id, minutes, found }} />
                </li>
              ))}
            </ol>
          </Fold>
        </SheetPart>
        <p>
          <Link className="button" href="/exercise">
            My attempts
          </Link>
        </p>
      </main>
    </>
  );
}

function ScoreFacts({ knowledge, reply }: Props) {
  const { verdict, debrief } = reply;
  const { score, orders } = debrief;
  const parts = (ids: readonly string[]): string => ids.map((id) => nameOfRepair(knowledge, id)).join("; ");
  const checks = (ids: readonly string[]): string => ids.map((id) => nameOfCheck(knowledge, id)).join("; ");
  return (
    <>
      {verdict !== null && (
        <p>
          <strong>{verdictWords(score)}</strong>{" "}
          {verdict.suspects.length === 0
            ? "No fault was named."
            : `Named: ${verdict.suspects.map((id) => nameOfSuspect(knowledge, id)).join("; ")}.`}
        </p>
      )}
      {verdict?.note !== undefined && <p className="note">{verdict.note}</p>}
      <dl className="takes">
        <Fact name="Minutes on the ramp">{minutesWords(score.minutes)}</Fact>
        <Fact name="The reasoning takes">{minutesWords(score.bestMinutes)}</Fact>
        <Fact name="Lost by the choice of checks">{minutesWords(score.lostMinutes)}</Fact>
        <Fact name="Checked on after it was proven">{minutesWords(score.afterProof)}</Fact>
      </dl>
      <ul>
        {verdict !== null && score.brier !== undefined && (
          <li>{brierWords(verdict.confidence, score.right === true, score.brier)}</li>
        )}
        <li>
          {score.unsafe.length === 0
            ? "No check was made that was dangerous as things stood."
            : `Dangerous as things stood: ${checks(score.unsafe)}.`}
        </li>
        <li>
          {score.cautionsSkipped.length === 0
            ? "No caution was passed over."
            : `Cautions not read: ${checks(score.cautionsSkipped)}.`}
        </li>
        <li>
          {score.wrongParts.length === 0
            ? "No part in order was named or ordered."
            : `In order, but named or ordered: ${parts(score.wrongParts)}.`}
        </li>
        {orders.length > 0 && <li>Ordered before the verdict: {parts(orders)}.</li>}
        {score.jumped && (
          <li>The verdict was given before anything proved it, while checking on was cheaper.</li>
        )}
      </ul>
    </>
  );
}
