"use client";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { minutesWords } from "../../text/amounts.ts";
import { capital, nameOfPlace } from "../../text/names.ts";
import { goToPart } from "../sheet-part.tsx";
import type { StepOnCard } from "./step-on-card.ts";
import type { OpenAttempt } from "./use-attempt.ts";

/** At the thumb: the minutes used, and the way to the next check. */
export function WorkBar({
  knowledge,
  attempt,
  open,
}: {
  readonly knowledge: Knowledge;
  readonly attempt: OpenAttempt;
  readonly open: StepOnCard | undefined;
}) {
  const placed = (open?.check?.places.length ?? 1) > 1;
  const words =
    open === undefined
      ? "Pick a check"
      : `${capital(open.name)}${placed ? `, ${nameOfPlace(knowledge, open.place)}` : ""}`;
  return (
    <nav className="next-bar always work-bar" aria-label="Next">
      <p className="work-clock number" role="status">
        <RampMinutes attempt={attempt} />
      </p>
      <button type="button" className="main" onClick={() => goToPart("next")}>
        <span className="next-words">{words}</span>
      </button>
      <button type="button" onClick={() => goToPart("verdict")}>
        Verdict
      </button>
    </nav>
  );
}

/** Minutes used on the ramp, and what is left where there is an end to them. */
function RampMinutes({ attempt }: { readonly attempt: OpenAttempt }) {
  const most = attempt.exercise.terms.mostMinutes;
  const used = minutesWords(attempt.minutes);
  if (most === undefined) return <>{used} used</>;
  return (
    <>
      {used} used, <strong>{minutesWords(Math.max(0, most - attempt.minutes))} left</strong>
    </>
  );
}
