"use client";
import Link from "next/link";
import { useEffect, useMemo } from "react";
import { situationOf } from "../../../lib/case/situation.ts";
import { takeInHand } from "../../store/case-in-hand.ts";
import { CaseHead } from "../case/case-head.tsx";
import { useReturn } from "../case/about-link.tsx";
import { ComplaintPart } from "../case/complaint-part.tsx";
import type { Opened } from "../case/opened-case.tsx";
import { FromCustomer } from "../case/from-customer.tsx";
import { StopNotices } from "../case/stop-notices.tsx";
import { useRanking } from "../case/use-ranking.ts";
import { AskCustomer } from "../share/ask-customer.tsx";
import { goToPart } from "../sheet-part.tsx";
import { SiteHead } from "../site-head.tsx";
import { AskPart, focusQuestion } from "./ask-part.tsx";
import { DecidePart, isGraver } from "./decide-part.tsx";
import { DeskBar, type DeskStep } from "./desk-bar.tsx";
import { SayPart } from "./say-part.tsx";
import { useBooking } from "./use-booking.ts";
import { useBeforeSeen } from "./use-before-seen.ts";
import { useQuestions } from "./use-questions.ts";

/** A case at the desk of an advisor: what was told is taken in, more is asked, it is decided what to do, and said. */
export function DeskSheet(opened: Opened) {
  const { knowledge, release, open, settings, onSettings } = opened;
  const { state, append, trouble } = open;
  // Asked before anything else: it is what somebody waits for with the customer on the line.
  const asking = useQuestions(
    useMemo(() => situationOf(knowledge, state), [knowledge, state]),
    state.caseId,
  );
  const { situation, ranked, failed } = useRanking(knowledge, state);
  const told = ranked !== undefined && ranked.target !== "none";
  const before = useBeforeSeen(knowledge, situation, settings, told);
  const booked = useBooking(knowledge, state, situation, settings, told && !asking.busy);

  const name = state.vehicle === "" ? "a car" : state.vehicle;
  useEffect(() => takeInHand({ id: state.caseId, name }), [state.caseId, name]);
  useReturn(ranked !== undefined);

  const now = before.value?.drive.level;
  const outOfDate =
    state.advised !== undefined && now !== undefined && isGraver(knowledge, now, state.advised.level);
  const step: DeskStep = !told
    ? "complaint"
    : state.advised !== undefined
      ? outOfDate
        ? "decide"
        : "say"
      : asking.open === undefined && !asking.busy
        ? "decide"
        : "ask";
  return (
    <>
      <SiteHead />
      <main id="main" className="sheet case-sheet desk-sheet">
        <CaseHead release={release} state={state} append={append} />
        <p className="row">
          <Link className="button" href={`/case?id=${encodeURIComponent(state.caseId)}`}>
            The whole case
          </Link>
          <Link className="button" href={`/case/handover?id=${encodeURIComponent(state.caseId)}`}>
            Hand-over
          </Link>
        </p>
        {trouble !== undefined && (
          <p className="trouble" role="alert">
            {trouble}
          </p>
        )}
        {failed !== undefined && (
          <p className="trouble" role="alert">
            What it may be could not be worked out: {failed} Undo the last entry, or mend it.
          </p>
        )}
        {ranked !== undefined && <StopNotices knowledge={knowledge} notices={ranked.notices} />}
        <div className="columns">
          <div className="column">
            <ComplaintPart
              knowledge={knowledge}
              state={state}
              settings={settings}
              onSettings={onSettings}
              append={append}
              onJudged={focusQuestion}
            />
            <FromCustomer state={state} />
            <AskPart
              knowledge={knowledge}
              entries={open.entries}
              asking={asking}
              unread={!told && state.text.length > 0}
              append={append}
              onEnough={() => goToPart("decide")}
            />
            <AskCustomer state={state} />
          </div>
          <div className="column">
            <DecidePart
              {...opened}
              told={told}
              before={before}
              booked={booked}
              onRecorded={() => goToPart("say")}
            />
            <SayPart
              {...opened}
              told={told}
              // A message from figures that failed to be worked out anew would be sent, and noted as sent.
              before={before.failed === undefined ? before.value : undefined}
              booked={booked.value}
            />
          </div>
        </div>
      </main>
      <DeskBar step={step} />
    </>
  );
}
