"use client";
import type { CaseState } from "../../../lib/case/case-state.ts";
import type { Entry } from "../../../lib/case/entries.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import type { Ranked, Situation } from "../../engine/protocol.ts";
import type { EntryBody } from "../../store/new-entry.ts";
import type { Settings } from "../../store/use-settings.ts";
import { nameOfCheck } from "../../text/names.ts";
import { Fold } from "../fold.tsx";
import { BatchChecks } from "../batch/batch-list.tsx";
import { useBatch } from "../batch/use-batch.ts";
import { CheckCard } from "../check/check-card.tsx";
import { OtherChecks } from "../check/other-checks.tsx";
import { SheetPart } from "../sheet-part.tsx";
import { AskerPicks } from "./asker-picks.tsx";
import { LastEntry } from "./last-entry.tsx";
import { type NextStepsOnScreen, optionsOf } from "./use-next-steps.ts";

/** The next check or question, and the others worth making. */
export function NextPart({
  knowledge,
  state,
  situation,
  settings,
  onSettings,
  append,
  entries,
  notices,
  next,
  onPick,
}: {
  readonly knowledge: Knowledge;
  readonly state: CaseState;
  readonly situation: Situation;
  readonly settings: Settings;
  readonly onSettings: (change: Partial<Settings>) => void;
  readonly append: (...bodies: readonly EntryBody[]) => void;
  readonly entries: readonly Entry[];
  readonly notices: Ranked["notices"];
  readonly next: NextStepsOnScreen;
  readonly onPick: (id: string | undefined) => void;
}) {
  const { stop, open, others, picked, failed } = next;
  const { decision } = next;
  const pays = decision !== undefined && decision.kind !== "check" && decision.kind !== "nothing-reported";
  const batch = useBatch(
    situation,
    state,
    optionsOf(knowledge, state, settings),
    stop !== undefined && !next.busy,
  );
  const inBatch = batch.begun?.checks.some(({ id }) => id === open?.id) === true;
  const ended = stop !== undefined && stop.kind !== "check-on";
  return (
    <SheetPart id="next" title="Next check">
      <LastEntry knowledge={knowledge} entries={entries} append={append} />
      <AskerPicks
        knowledge={knowledge}
        state={state}
        settings={settings}
        onSettings={onSettings}
        append={append}
      />
      {failed !== undefined && (
        <p className="trouble" role="alert">
          The next check could not be worked out: {failed}
        </p>
      )}
      {(ended || pays) && (
        <p className="notice">
          <strong>{ended ? stop.why : decision?.why}</strong>
        </p>
      )}
      {stop === undefined && failed === undefined && <p role="status">Choosing the next check ...</p>}
      {open === undefined && picked && !next.busy && (
        <p className="notice">That check settles nothing on this car.</p>
      )}
      {open === undefined && !picked && stop !== undefined && (
        <p>
          No check is left for who is here and what the car allows. A lift, a helper or another state of the
          car may open more.
        </p>
      )}
      {open !== undefined && (
        <CheckCard
          key={open.id}
          knowledge={knowledge}
          state={state}
          proposed={open}
          situation={situation}
          notices={notices}
          settings={settings}
          onSettings={onSettings}
          append={append}
          onDone={() => onPick(inBatch ? batch.after(open.id) : undefined)}
        />
      )}
      {picked && (
        <button type="button" className="plain" onClick={() => onPick(undefined)}>
          Back to the best next check
        </button>
      )}
      <BatchChecks
        knowledge={knowledge}
        batch={batch}
        open={inBatch ? open?.id : undefined}
        onOpen={onPick}
      />
      <OtherChecks
        key={`others ${open?.id}`}
        knowledge={knowledge}
        checks={others}
        onOpen={(proposed) => onPick(proposed.id)}
      />
      {state.notPossible.length > 0 && (
        <Fold title={<>Put aside ({state.notPossible.length})</>}>
          <ul>
            {state.notPossible.map(({ check, reason }) => (
              <li key={check}>
                {nameOfCheck(knowledge, check)}
                {reason !== "" && `: ${reason}`}
              </li>
            ))}
          </ul>
          <p className="small soft">Undo the entry below to have a check proposed again.</p>
        </Fold>
      )}
    </SheetPart>
  );
}
