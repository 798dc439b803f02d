"use client";
import Link from "next/link";
import { jobCard } from "../../../lib/case/job-card.ts";
import { CaseOfAddress, type Opened } from "../case/opened-case.tsx";
import { useRanking } from "../case/use-ranking.ts";
import { SiteHead } from "../site-head.tsx";
import { JobCardSheet } from "./job-card-sheet.tsx";

/** The job card of the case that the address names. */
export function CardScreen() {
  return <CaseOfAddress>{(opened) => <CardOfCase {...opened} />}</CaseOfAddress>;
}

function CardOfCase({ knowledge, release, open: { state } }: Opened) {
  const { ranked, failed } = useRanking(knowledge, state);
  const card =
    ranked === undefined
      ? undefined
      : jobCard(
          knowledge,
          state,
          {
            ranking: ranked.leaders.map(({ id, present }) => ({ suspect: { id }, present })),
            notInKnowledge: ranked.notInKnowledge,
            notices: ranked.notices,
          },
          release.sha256,
        );
  return (
    <>
      <SiteHead />
      <main id="main" className="sheet card-sheet">
        <div className="row no-print">
          <Link className="button" href={`/case?id=${encodeURIComponent(state.caseId)}`}>
            Back to the case
          </Link>
          <button type="button" className="main" disabled={card === undefined} onClick={() => window.print()}>
            Print
          </button>
        </div>
        {failed !== undefined && (
          <p className="trouble" role="alert">
            The card could not be worked out: {failed}
          </p>
        )}
        {card === undefined && failed === undefined && <p role="status">Setting the card ...</p>}
        {card !== undefined && <JobCardSheet card={card} knowledge={knowledge} />}
      </main>
    </>
  );
}
