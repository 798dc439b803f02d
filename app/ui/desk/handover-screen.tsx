"use client";
import Link from "next/link";
import { jobCard } from "../../../lib/case/job-card.ts";
import { useAnswer } from "../../engine/use-answer.ts";
import { withoutTools } from "../../text/tools.ts";
import { CaseOfAddress, type Opened } from "../case/opened-case.tsx";
import { useRanking } from "../case/use-ranking.ts";
import { SiteHead } from "../site-head.tsx";
import { HandoverSheet } from "./handover-sheet.tsx";

/** The hand-over of the case that the address names: from the desk to the ramp. */
export function HandoverScreen() {
  return <CaseOfAddress>{(opened) => <HandoverOfCase {...opened} />}</CaseOfAddress>;
}

/** Checks that are listed: the results of the first ones decide what comes after. */
const CHECKS = 6;

function HandoverOfCase({ knowledge, release, open: { state }, settings }: Opened) {
  const { situation, ranked, failed } = useRanking(knowledge, state);
  const options = {
    setUp: state.setUp,
    who: "technician",
    lift: true,
    helper: true,
    only: "checks",
    notPossible: [
      ...state.notPossible.map((n) => n.check),
      ...withoutTools(knowledge.checks, settings.missingTools),
    ],
    limit: CHECKS,
  } as const;
  const key = JSON.stringify([situation, options]);
  const next = useAnswer("propose", { ...situation, options }, key);
  const id = encodeURIComponent(state.caseId);
  const trouble = failed ?? next.failed;
  const checks = next.ok && failed === undefined ? next.value?.checks : undefined;
  const ready = ranked !== undefined && checks !== undefined;
  return (
    <>
      <SiteHead />
      <main id="main" className="sheet card-sheet">
        <div className="row no-print">
          <Link className="button" href={`/case/desk?id=${id}`}>
            Back to the desk
          </Link>
          <Link className="button" href={`/case?id=${id}`}>
            Open the case
          </Link>
          <button type="button" className="main" disabled={!ready} onClick={() => window.print()}>
            Print
          </button>
        </div>
        {trouble !== undefined && (
          <p className="trouble" role="alert">
            The hand-over could not be worked out: {trouble}
          </p>
        )}
        {!ready && trouble === undefined && <p role="status">Setting the hand-over ...</p>}
        {ranked !== undefined && checks !== undefined && (
          <HandoverSheet
            knowledge={knowledge}
            ranked={ranked}
            checks={checks}
            notes={state.notes}
            card={jobCard(
              knowledge,
              state,
              {
                ranking: ranked.leaders.map(({ id: suspect, present }) => ({
                  suspect: { id: suspect },
                  present,
                })),
                notInKnowledge: ranked.notInKnowledge,
                notices: ranked.notices,
              },
              release.sha256,
            )}
          />
        )}
      </main>
    </>
  );
}
