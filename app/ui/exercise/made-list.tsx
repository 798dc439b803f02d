import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { minutesWords } from "../../text/amounts.ts";
import { foundLine } from "../../text/found-lines.ts";
import { capital, nameOfCheck, nameOfRepair } from "../../text/names.ts";
import { type MadeStep, madeSteps } from "./made-steps.ts";
import type { OpenAttempt } from "./use-attempt.ts";

/** What was done so far and what it found, the last first. */
export function MadeList({
  knowledge,
  attempt,
}: {
  readonly knowledge: Knowledge;
  readonly attempt: OpenAttempt;
}) {
  const steps = madeSteps(attempt.entries).toReversed();
  if (steps.length === 0)
    return <p>Nothing yet. What is done is kept on the server at once, and stays done.</p>;
  return (
    <ol className="timeline" reversed>
      {steps.map((step) => (
        <li key={step.key}>
          {step.kind === "order" ? (
            <span className="entry-words">Ordered: {nameOfRepair(knowledge, step.repair)}</span>
          ) : (
            <div className="entry-words">
              <CheckDone knowledge={knowledge} step={step} />
            </div>
          )}
        </li>
      ))}
    </ol>
  );
}

/** A check that was made, what it took and what it found. */
export function CheckDone({
  knowledge,
  step,
}: {
  readonly knowledge: Knowledge;
  readonly step: Pick<Extract<MadeStep, { kind: "check" }>, "check" | "minutes" | "found">;
}) {
  // A question has one answer, which its name stands before already.
  const [answer] = step.found;
  if (step.check.startsWith("ask:") && answer !== undefined)
    return (
      <>
        Asked: <strong>{foundLine(knowledge, answer)}</strong>{" "}
        <span className="soft number">{minutesWords(step.minutes)}</span>
      </>
    );
  return (
    <>
      <strong>{capital(nameOfCheck(knowledge, step.check))}</strong>{" "}
      <span className="soft number">{minutesWords(step.minutes)}</span>
      <ul>
        {step.found.map((found) => (
          <li key={found.finding}>{foundLine(knowledge, found)}</li>
        ))}
      </ul>
    </>
  );
}
