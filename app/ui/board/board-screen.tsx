"use client";
import Link from "next/link";
import { useSearchParams } from "next/navigation";
import { useKnowledge } from "../../knowledge/use-knowledge.ts";
import { SheetPart } from "../sheet-part.tsx";
import { SiteHead } from "../site-head.tsx";
import { TeachGate } from "../teach/teach-gate.tsx";
import { AttemptsList } from "./attempts-list.tsx";
import { BoardFilters } from "./board-filters.tsx";
import { CostsTable, LostTable } from "./costs-table.tsx";
import { addressOf, type Filter, filterOf } from "./filter.ts";
import type { BoardReply } from "./replies.ts";
import { ResultsOut } from "./results-out.tsx";
import { TallyTable } from "./tally-table.tsx";
import { useBoard } from "./use-board.ts";

/** How a class did: by trainee and exercise, what it overlooks, and each attempt. */
export function BoardScreen() {
  return (
    <>
      <SiteHead />
      <main id="main" className="sheet board-sheet">
        <h1>How the class did</h1>
        <p>
          <Link href="/teach">Exercises to hand out</Link>
        </p>
        <TeachGate
          others={
            <>
              Only instructors and the owner see how a class did. Your own attempts are at{" "}
              <Link href="/exercise">the bench</Link>.
            </>
          }
        >
          <Attempts />
        </TeachGate>
      </main>
    </>
  );
}

function Attempts() {
  const filter = filterOf(useSearchParams());
  const setFilter = (next: Filter): void =>
    window.history.replaceState(null, "", `${window.location.pathname}${addressOf(next)}`);
  const { board: reply, list, failed, busy, showMore } = useBoard(filter);
  const release = useKnowledge();
  const knowledge = release.is === "ready" ? release.value.knowledge : undefined;
  return (
    <>
      {failed !== undefined && (
        <p className="trouble" role="alert">
          {failed}
        </p>
      )}
      {reply === undefined && failed === undefined && <p role="status">Adding up ...</p>}
      {reply !== undefined && (
        <>
          <BoardFilters filter={filter} choices={reply.choices} onFilter={setFilter} />
          {reply.more && (
            <p className="notice">There are more attempts than are added up at once. Narrow what is shown.</p>
          )}
          {reply.board.total.attempts === 0 ? (
            <p>Nobody has begun one of these yet. Hand an exercise out by its code or link.</p>
          ) : (
            <Tallies reply={reply} busy={busy} filter={filter} onFilter={setFilter} />
          )}
          {reply.board.total.ended > 0 && (
            <SheetPart id="overlooked" title="What they overlook" busy={busy}>
              <p className="soft">
                Each step is held against the best choice at that moment, with what was known then.
              </p>
              <div className="side-by-side">
                <div>
                  <CostsTable
                    caption="Would have told most, and was never made"
                    costs={reply.board.overlooked}
                    knowledge={knowledge}
                  />
                </div>
                <div>
                  <CostsTable
                    caption="Made, and cost most"
                    costs={reply.board.costly}
                    knowledge={knowledge}
                  />
                </div>
                <div>
                  <LostTable lostIn={reply.board.lostIn} />
                </div>
              </div>
              {reply.board.withoutSteps > 0 && (
                <p className="small soft">
                  Without {reply.board.withoutSteps} older attempts, of which the steps are not kept: their
                  debriefs show them.
                </p>
              )}
            </SheetPart>
          )}
        </>
      )}
      {list !== undefined && list.attempts.length > 0 && (
        <SheetPart id="attempts" title="Attempts" busy={busy}>
          <p className="soft">Each leads to its debrief.</p>
          <AttemptsList list={list} knowledge={knowledge} onMore={showMore} />
        </SheetPart>
      )}
      {reply !== undefined && (
        <SheetPart id="results" title="Take the results along">
          <ResultsOut filter={filter} attempts={reply.board.total.attempts} recordStore={reply.recordStore} />
        </SheetPart>
      )}
    </>
  );
}

function Tallies({
  reply,
  busy,
  filter,
  onFilter,
}: {
  readonly reply: BoardReply;
  readonly busy: boolean;
  readonly filter: Filter;
  readonly onFilter: (filter: Filter) => void;
}) {
  const { trainees, exercises } = reply.board;
  return (
    <SheetPart id="tallies" title="By trainee and exercise" busy={busy}>
      <TallyTable
        caption="By trainee"
        what="Trainee"
        rows={trainees}
        keyOf={({ id, name }) => (id === null ? `typed ${name}` : `account ${id}`)}
        onPick={({ id, name }) => onFilter({ ...filter, trainee: id ?? name })}
      />
      <TallyTable
        caption="By exercise"
        what="Exercise"
        rows={exercises}
        keyOf={({ id }) => id}
        onPick={({ id }) => onFilter({ ...filter, exercise: id })}
      />
      <p className="small soft">
        Right: a part behind the complaint was named at its place. Brier score: how far the stated certainty
        was from what came out, over all verdicts. 0 is sure and right each time, 1 sure and wrong; always
        saying 50 % gives 0.25. Jumped: the verdict came before the proof, while checking on was cheaper.
      </p>
    </SheetPart>
  );
}
