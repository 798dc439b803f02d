"use client";
import type { Grounded } from "../../../lib/engine/index.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import type { Ranked } from "../../engine/protocol.ts";
import { OtherChecks } from "../check/other-checks.tsx";
import type { NextStepsOnScreen } from "../case/use-next-steps.ts";
import { SheetPart } from "../sheet-part.tsx";
import { AllChecks } from "./all-checks.tsx";
import { CheckDone } from "./made-list.tsx";
import { ExerciseCheck } from "./exercise-check.tsx";
import { madeSteps } from "./made-steps.ts";
import type { StepOnCard } from "./step-on-card.ts";
import type { AttemptAtWork, OpenAttempt } from "./use-attempt.ts";

interface Props {
  readonly knowledge: Knowledge;
  readonly grounded: Grounded;
  readonly attempt: OpenAttempt;
  readonly work: AttemptAtWork;
  readonly next: NextStepsOnScreen;
  /** The check that is open; undefined when none was picked and none is proposed. */
  readonly open: StepOnCard | undefined;
  /** The open one was picked by the trainee. */
  readonly picked: boolean;
  readonly notices: Ranked["notices"];
  readonly onPick: (id: string | undefined) => void;
}

/** What the last check found, the next one, and every other that the car allows. */
export function ExerciseNext({
  knowledge,
  grounded,
  attempt,
  work,
  next,
  open,
  picked,
  notices,
  onPick,
}: Props) {
  const { hints } = attempt.exercise.terms;
  const last = madeSteps(attempt.entries).findLast((step) => step.kind === "check");
  return (
    <SheetPart id="next" title="Next check">
      <div role="status" aria-live="polite">
        {last?.kind === "check" && (
          <div className="notice">
            <p className="small">Last check, and what it found:</p>
            <CheckDone knowledge={knowledge} step={last} />
          </div>
        )}
      </div>
      {work.trouble !== undefined && (
        <p className="trouble" role="alert">
          {work.trouble}
        </p>
      )}
      {hints && next.failed !== undefined && (
        <p className="trouble" role="alert">
          The next check could not be worked out: {next.failed}
        </p>
      )}
      {hints && next.stop === undefined && next.failed === undefined && (
        <p role="status">Choosing the next check ...</p>
      )}
      {open === undefined && hints && next.stop !== undefined && !picked && (
        <p>Nothing is left that would tell much. Give your verdict, or pick a check below.</p>
      )}
      {open === undefined && !hints && <p>Pick a check or a question below.</p>}
      {open !== undefined && (
        <ExerciseCheck
          key={open.id}
          knowledge={knowledge}
          attempt={attempt}
          work={work}
          proposed={open}
          notices={notices}
          onDone={() => onPick(undefined)}
        />
      )}
      {picked && (
        <button type="button" className="plain" onClick={() => onPick(undefined)}>
          {hints ? "Back to the best next check" : "Put this one back"}
        </button>
      )}
      {hints && (
        <OtherChecks
          knowledge={knowledge}
          checks={picked ? [] : next.others}
          onOpen={({ id }) => onPick(id)}
        />
      )}
      <AllChecks knowledge={knowledge} grounded={grounded} open={!hints} attempt={attempt} onPick={onPick} />
    </SheetPart>
  );
}
