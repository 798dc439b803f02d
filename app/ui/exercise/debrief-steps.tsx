import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { minutesWords } from "../../text/amounts.ts";
import { percent } from "../../text/chance-words.ts";
import { stepWords } from "../../text/debrief-words.ts";
import { foundLine } from "../../text/found-lines.ts";
import { capital, nameOfCheck, nameOfRepair } from "../../text/names.ts";
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
          <p>
            <strong>
              {step.id.startsWith("ask:") ? "Asked: " : ""}
              {capital(nameOfCheck(knowledge, step.id))}
            </strong>{" "}
            <span className="soft number">{minutesWords(step.minutes)}</span>
          </p>
          <ul>
            {step.found.map((found) => (
              <li key={found.finding}>{foundLine(knowledge, found)}</li>
            ))}
          </ul>
          {stepWords(step, (id) => nameOfCheck(knowledge, id)).map((line) => (
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
