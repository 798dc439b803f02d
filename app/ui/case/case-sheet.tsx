"use client";
import Link from "next/link";
import { useEffect } from "react";
import { takeInHand } from "../../store/case-in-hand.ts";
import { useKept } from "../../store/use-kept.ts";
import { ChoicesPart } from "../choices/choices-part.tsx";
import { Fold } from "../fold.tsx";
import { goToPart, SheetPart } from "../sheet-part.tsx";
import { SiteHead } from "../site-head.tsx";
import { PhotosPart } from "../photos/photos-part.tsx";
import { AskCustomer } from "../share/ask-customer.tsx";
import { SharePart } from "../share/share-part.tsx";
import { BenchLinks } from "../shop/bench-links.tsx";
import { CaseHead } from "./case-head.tsx";
import { ComplaintPart } from "./complaint-part.tsx";
import { DoubtLines } from "./doubt-lines.tsx";
import { FromCustomer } from "./from-customer.tsx";
import { MindChanges } from "./mind-changes.tsx";
import { NextBar } from "./next-bar.tsx";
import { NextPart } from "./next-part.tsx";
import { NotesPart } from "./notes-part.tsx";
import type { Opened } from "./opened-case.tsx";
import { RankingNews } from "./ranking-news.tsx";
import { RankingPart } from "./ranking-part.tsx";
import { StopNotices } from "./stop-notices.tsx";
import { Timeline } from "./timeline.tsx";
import { useReturn } from "./about-link.tsx";
import { optionsOf, useNextSteps } from "./use-next-steps.ts";
import { useRanking } from "./use-ranking.ts";
import { VerdictPart } from "./verdict-part.tsx";

/** The one page of a case. */
export function CaseSheet({ knowledge, release, open, settings, onSettings }: Opened) {
  const { state, entries, append, trouble } = open;
  const ranking = useRanking(knowledge, state);
  const { situation, ranked } = ranking;
  const next = useNextSteps(knowledge, situation, state, settings, "decision");
  const [suspect, setSuspect] = useKept<string | undefined>(`${state.caseId}/suspect`, undefined);
  const told = ranked !== undefined && ranked.target !== "none";

  const name = state.vehicle === "" ? "a car" : state.vehicle;
  useEffect(() => takeInHand({ id: state.caseId, name }), [state.caseId, name]);
  useReturn(told);

  const openSuspect = (id: string) => {
    setSuspect(id);
    requestAnimationFrame(() => {
      const row = document.getElementById(`suspect-${id}`)?.closest("li");
      row?.scrollIntoView({ block: "start" });
      row?.querySelector("button")?.focus({ preventScroll: true });
    });
  };
  const pick = (id: string | undefined) => {
    next.pick(id);
    requestAnimationFrame(() => goToPart("next"));
  };

  return (
    <>
      <SiteHead />
      <main id="main" className="sheet case-sheet">
        <CaseHead release={release} state={state} append={append} />
        <p className="row">
          <Link className="button" href={`/case/desk?id=${encodeURIComponent(state.caseId)}`}>
            Advisor&apos;s desk
          </Link>
        </p>
        {trouble !== undefined && (
          <p className="trouble" role="alert">
            {trouble}
          </p>
        )}
        {ranked !== undefined && <StopNotices knowledge={knowledge} notices={ranked.notices} />}
        {ranked !== undefined && <RankingNews ranked={ranked} />}
        <div className="columns">
          <div className="column">
            <ComplaintPart
              knowledge={knowledge}
              state={state}
              settings={settings}
              onSettings={onSettings}
              append={append}
              onCheck={pick}
            />
            <FromCustomer state={state} />
            <RankingPart
              knowledge={knowledge}
              car={state.car}
              ranking={ranking}
              mend="Undo the last entry, or mend it."
              instead={
                ranked !== undefined && !told ? (
                  <p className="notice">
                    Nothing was told yet. Take what was read above, or tick what is wrong; the ranking
                    follows.
                  </p>
                ) : undefined
              }
              suspect={suspect}
              onSuspect={setSuspect}
              onDrawn={openSuspect}
            >
              <DoubtLines knowledge={knowledge} situation={situation} onCheck={pick} />
              <Fold title="What would change your mind">
                <MindChanges
                  knowledge={knowledge}
                  situation={situation}
                  options={optionsOf(knowledge, state, settings)}
                  onCheck={pick}
                />
              </Fold>
            </RankingPart>
          </div>
          <div className="column">
            {ranked !== undefined && told && (
              <NextPart
                knowledge={knowledge}
                state={state}
                situation={situation}
                settings={settings}
                onSettings={onSettings}
                append={append}
                entries={entries}
                notices={ranked.notices}
                next={next}
                onPick={pick}
              />
            )}
            {ranked !== undefined && told && (
              <ChoicesPart
                knowledge={knowledge}
                decision={next.decision}
                deciding={next.deciding}
                failed={next.undecided}
                settings={settings}
                onSettings={onSettings}
              />
            )}
            {ranked !== undefined && told && (
              <SheetPart id="verdict" title="Verdict">
                <VerdictPart knowledge={knowledge} state={state} ranked={ranked} append={append} />
              </SheetPart>
            )}
            <BenchLinks caseId={state.caseId} />
            <NotesPart state={state} append={append} />
            <PhotosPart state={state} by={settings.by} />
            <SheetPart id="timeline" title="What was entered">
              <Timeline knowledge={knowledge} state={state} append={append} />
              <AskCustomer state={state} />
              <SharePart caseId={state.caseId} />
            </SheetPart>
          </div>
        </div>
      </main>
      <NextBar knowledge={knowledge} state={state} told={told} next={next} />
    </>
  );
}
