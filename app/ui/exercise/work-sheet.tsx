"use client";
import { useMemo } from "react";
import { groundCar } from "../../../lib/engine/index.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { meansOf } from "../../../lib/training/best-way.ts";
import { useKept } from "../../store/use-kept.ts";
import { useSettings } from "../../store/use-settings.ts";
import { RankingNews } from "../case/ranking-news.tsx";
import { RankingPart } from "../case/ranking-part.tsx";
import { StopNotices } from "../case/stop-notices.tsx";
import { useNextSteps } from "../case/use-next-steps.ts";
import { useRanking } from "../case/use-ranking.ts";
import { goToPart, SheetPart } from "../sheet-part.tsx";
import { SiteHead } from "../site-head.tsx";
import { ExerciseNext } from "./exercise-next.tsx";
import { MadeList } from "./made-list.tsx";
import { OrderPart } from "./order-part.tsx";
import { stepOnCard } from "./step-on-card.ts";
import { Terms } from "./terms.tsx";
import type { AttemptAtWork, OpenAttempt } from "./use-attempt.ts";
import { VerdictForm } from "./verdict-form.tsx";
import { WhatWasSaid } from "./what-was-said.tsx";
import { WorkBar } from "./work-bar.tsx";

/** The one page of an attempt: what was said, the ranking, the next check, the verdict. */
export function WorkSheet({
  knowledge,
  attempt,
  work,
}: {
  readonly knowledge: Knowledge;
  readonly attempt: OpenAttempt;
  readonly work: AttemptAtWork;
}) {
  const { state, exercise } = attempt;
  const { terms } = exercise;
  const [own] = useSettings();
  const settings = useMemo(
    () => ({
      ...own,
      asker: terms.lift ? ("technician-lift" as const) : ("technician" as const),
      helper: terms.helper,
      canAsk: true,
      // What is missing here goes by the exercise, below; what the own workshop lacks plays no part.
      missingTools: [],
    }),
    [own, terms],
  );
  const ranking = useRanking(knowledge, state);
  const { situation, ranked } = ranking;
  const able = useMemo(() => {
    const out = meansOf({ exercise, grounded: { knowledge } }).notPossible;
    const aside = out.map((check) => ({ check, reason: "not in this exercise" }));
    return { ...state, notPossible: [...state.notPossible, ...aside] };
  }, [knowledge, exercise, state]);
  const next = useNextSteps(knowledge, situation, able, settings, terms.hints ? "steps" : "nothing");
  const [suspect, setSuspect] = useKept<string | undefined>(`${state.caseId}/suspect`, undefined);
  const grounded = useMemo(
    () => groundCar(knowledge, exercise.car, exercise.lately),
    [knowledge, exercise.car, exercise.lately],
  );
  const [picked, setPicked] = useKept<string | undefined>(`${state.caseId}/exercise-picked`, undefined);
  const open =
    picked !== undefined
      ? stepOnCard(grounded, picked, state.setUp)
      : // Where nothing is hinted, only what the trainee picks is open.
        terms.hints
        ? next.open
        : undefined;
  const pick = (id: string | undefined): void => {
    setPicked(id);
    requestAnimationFrame(() => goToPart("next"));
  };
  const leaders = terms.ranking ? (ranked?.leaders ?? []).map(({ id }) => id) : [];
  return (
    <>
      <SiteHead />
      <main id="main" className="sheet case-sheet">
        <div className="case-head">
          <h1>{exercise.name}</h1>
          <p className="invented">
            <strong>Exercise.</strong> Invented car, customer and fault. Worked by {attempt.name}.
          </p>
          {exercise.about !== "" && <p>{exercise.about}</p>}
        </div>
        {ranked !== undefined && <StopNotices knowledge={knowledge} notices={ranked.notices} />}
        {ranked !== undefined && terms.ranking && <RankingNews ranked={ranked} />}
        <div className="columns">
          <div className="column">
            <SheetPart id="complaint" title="Complaint and car">
              <WhatWasSaid knowledge={knowledge} attempt={attempt} />
              <Terms exercise={exercise} />
            </SheetPart>
            <RankingPart
              knowledge={knowledge}
              car={state.car}
              ranking={ranking}
              instead={
                terms.ranking ? undefined : (
                  <p>The ranking is not shown in this exercise: it is yours to make.</p>
                )
              }
              suspect={suspect}
              onSuspect={setSuspect}
            />
          </div>
          <div className="column">
            <ExerciseNext
              knowledge={knowledge}
              grounded={grounded}
              attempt={attempt}
              work={work}
              next={next}
              open={open}
              picked={picked !== undefined}
              notices={ranked?.notices ?? []}
              onPick={pick}
            />
            <SheetPart id="verdict" title="Verdict">
              <VerdictForm
                knowledge={knowledge}
                grounded={grounded}
                attempt={attempt}
                work={work}
                leaders={leaders}
              />
            </SheetPart>
            <OrderPart knowledge={knowledge} grounded={grounded} attempt={attempt} work={work} />
            <SheetPart id="timeline" title="What you did">
              <MadeList knowledge={knowledge} attempt={attempt} />
            </SheetPart>
          </div>
        </div>
      </main>
      <WorkBar knowledge={knowledge} attempt={attempt} open={open} />
    </>
  );
}
