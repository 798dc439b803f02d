"use client";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import type { PlayAnswer, PlayRequest } from "../../../lib/requests/play-request.ts";
import type { OpenCase } from "../../store/use-case.ts";
import { capital, nameOfFinding } from "../../text/names.ts";
import { gradeOf, observationOf, resultWords } from "../check/result.ts";

const MM_PER_INCH = 25.4;

/** Takes the movement over into the case as the measured finding. */
export function PlayTakeOver({
  knowledge,
  answer,
  request,
  open: { state, append },
}: {
  readonly knowledge: Knowledge;
  readonly answer: PlayAnswer;
  readonly request: PlayRequest | undefined;
  readonly open: OpenCase;
}) {
  const { finding } = answer;
  const observation = finding && observationOf(knowledge, finding.id);
  if (finding === undefined || observation === undefined) return null;
  const open = observation.places.length > 1 && !finding.id.includes("@");
  if (open)
    return (
      <p className="notice">Pick above where it was measured, then it can be taken over into the case.</p>
    );
  // What conversion adds beyond a thousandth is noise.
  const value = Math.round(finding.value * 1000) / 1000;
  const result = gradeOf(observation, value);
  const is = state.answers.find((a) => a.finding === finding.id);
  const name = capital(nameOfFinding(knowledge, finding.id));
  const circle = request?.circle;
  const circleMm = circle ? circle.value * (circle.unit === "in" ? MM_PER_INCH : 1) : undefined;
  return (
    <div className="proposals">
      <p>
        <strong>{name}</strong>: {value} mm counts in the ranking as &quot;{resultWords(result).toLowerCase()}
        &quot;.
      </p>
      {is?.value === value && is.by === "check" ? (
        <p role="status">Taken over into the case</p>
      ) : (
        <button
          type="button"
          className="wide"
          onClick={() =>
            append({
              kind: "answered",
              finding: finding.id,
              ...result,
              how: "check",
              ...(circleMm !== undefined && { circleMm }),
            })
          }
        >
          Take it over into the case
        </button>
      )}
    </div>
  );
}
