"use client";
import { useMemo, useState } from "react";
import type { Entry } from "../../../lib/case/entries.ts";
import { foldCase } from "../../../lib/case/fold.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { momentWords } from "../../text/moment.ts";
import { nameOfSuspect } from "../../text/names.ts";
import { NotesList } from "../case/notes-list.tsx";
import { Ranking } from "../case/ranking.tsx";
import { StopNotices } from "../case/stop-notices.tsx";
import { Timeline } from "../case/timeline.tsx";
import { useRanking } from "../case/use-ranking.ts";
import { SheetPart } from "../sheet-part.tsx";

/** A case as somebody outside the workshop reads it: nothing on it can be changed. */
export function SharedSheet({
  knowledge,
  entries,
}: {
  readonly knowledge: Knowledge;
  readonly entries: readonly Entry[];
}) {
  const state = useMemo(() => foldCase(entries), [entries]);
  const { situation, ranked, failed, busy } = useRanking(knowledge, state);
  const [suspect, setSuspect] = useState<string>();
  const { verdict } = state;
  return (
    <>
      <header className="site-head">
        <span className="brand">Cornerwise</span>
      </header>
      <main id="main" className="sheet case-sheet">
        <div className="case-head">
          <h1>{state.vehicle === "" ? "A car" : state.vehicle}</h1>
          <p className="soft">
            {[state.plate, state.customer].filter(Boolean).join(", ")}
            {state.openedAt !== undefined && (
              <span className="number"> opened {momentWords(state.openedAt)}</span>
            )}
          </p>
          <p className="small soft">
            Shared by a workshop, to read only, as it stood when this page was loaded.
          </p>
          {state.invented && (
            <p className="invented">
              <strong>Invented case.</strong> No real car, customer or workshop.
            </p>
          )}
        </div>
        {ranked !== undefined && <StopNotices knowledge={knowledge} notices={ranked.notices} />}
        <div className="columns">
          <div className="column">
            {state.text.length > 0 && (
              <SheetPart id="told" title="What was told">
                {state.text.map((text, index) => (
                  <p key={index} className="told">
                    {text}
                  </p>
                ))}
              </SheetPart>
            )}
            {verdict !== undefined && (
              <SheetPart id="verdict" title="Verdict">
                <ul>
                  {verdict.suspects.map((id) => (
                    <li key={id}>{nameOfSuspect(knowledge, id)}</li>
                  ))}
                </ul>
                {verdict.note !== undefined && <p className="note">{verdict.note}</p>}
              </SheetPart>
            )}
            <SheetPart id="ranking" title="What it may be" busy={busy}>
              {failed !== undefined && (
                <p className="trouble" role="alert">
                  The ranking could not be worked out: {failed}
                </p>
              )}
              {ranked === undefined && failed === undefined && <p role="status">Working it out ...</p>}
              {ranked !== undefined && ranked.target === "none" && (
                <p className="notice">Nothing was ticked yet.</p>
              )}
              {ranked !== undefined && ranked.target !== "none" && (
                <Ranking
                  knowledge={knowledge}
                  ranked={ranked}
                  situation={situation}
                  open={suspect}
                  onOpen={setSuspect}
                />
              )}
            </SheetPart>
          </div>
          <div className="column">
            {state.notes.length > 0 && (
              <SheetPart id="notes" title="Notes">
                <NotesList notes={state.notes} />
              </SheetPart>
            )}
            <SheetPart id="timeline" title="What was entered">
              <Timeline knowledge={knowledge} state={state} />
            </SheetPart>
          </div>
        </div>
      </main>
    </>
  );
}
