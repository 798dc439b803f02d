import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { percent } from "../../text/chance-words.ts";
import { doneWords, stepWords } from "../../text/debrief-words.ts";
import { nameOfRepair } from "../../text/names.ts";
import { CheckDone } from "./made-list.tsx";
import type { DebriefStep } from "./replies.ts";

/** Every check that was made, what it found, and what would have told more then. */
export function DebriefSteps({
  knowledge,
  steps,
}: {
  readonly knowledge: Knowledge;
  readonly steps: readonly DebriefStep[];
}) {
  if (steps.length === 0) return <p>No check was made.</p>;
  return (
    <ol className="debrief-steps">
      {steps.map((step, index) => (
        <li key={index}>
          <CheckDone
            knowledge={knowledge}
            step={{ check: step.id, minutes: step.minutes, found: step.found }}
          />
          {stepWords(step, (id) => doneWords(knowledge, id)).map((line) => (
            <p key={line} className="small">
              {line}
            </p>
          ))}
          {step.inFront !== undefined && (
            <p className="small soft">
              In front afterwards: {nameOfRepair(knowledge, step.inFront.repair)},{" "}
              {percent(step.inFront.chance)}
            </p>
          )}
        </li>
      ))}
    </ol>
  );
}
