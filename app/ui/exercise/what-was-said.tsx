import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { saidLines } from "../../text/said-lines.ts";
import { capital, nameOfFinding } from "../../text/names.ts";
import { CarLine } from "./car-line.tsx";
import type { OpenAttempt } from "./use-attempt.ts";

/** What the customer says at the start, as words and as findings, and of which car. */
export function WhatWasSaid({
  knowledge,
  attempt,
}: {
  readonly knowledge: Knowledge;
  readonly attempt: OpenAttempt;
}) {
  const { exercise } = attempt;
  const present = saidLines(knowledge, exercise.said, "present");
  const absent = saidLines(knowledge, exercise.said, "absent");
  return (
    <>
      {exercise.text !== "" && <p className="told">{exercise.text}</p>}
      <ul>
        {present.map(({ key, of, names }) => (
          <li key={key}>{capital([of, names.join("; ")].filter(Boolean).join(": "))}</li>
        ))}
        {absent.map(({ key, of, names }) => (
          <li key={`not ${key}`}>Said not to be so: {[of, names.join("; ")].filter(Boolean).join(": ")}</li>
        ))}
        {exercise.lately.map((id) => (
          <li key={id}>Lately: {capital(nameOfFinding(knowledge, id))}</li>
        ))}
      </ul>
      <CarLine knowledge={knowledge} exercise={exercise} />
    </>
  );
}
