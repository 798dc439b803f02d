"use client";
import { useId, useState } from "react";
import type { Settled } from "../../../lib/engine/index.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { useKept } from "../../store/use-kept.ts";
import { lengthInMm, shownLength, typedNumber, type Units } from "../../text/amounts.ts";
import { capital, levelWords, nameOfFindingAt } from "../../text/names.ts";
import { gradeOf, observationOf, type Result, resultWords } from "./result.ts";

/** Buttons, and a number where it can be measured, for one finding of a check. */
export function ResultEntry({
  knowledge,
  settled,
  place,
  result,
  question,
  units,
  keptAs,
  onResult,
}: {
  readonly knowledge: Knowledge;
  readonly settled: Settled;
  /** Where the check is made; not said again in the finding's name. */
  readonly place: string | undefined;
  readonly result: Result | undefined;
  readonly question: boolean;
  readonly units: Units;
  /** Where a number that is typed but not yet used is kept. */
  readonly keptAs: string;
  readonly onResult: (result: Result) => void;
}) {
  const observation = observationOf(knowledge, settled.finding);
  const name = nameOfFindingAt(knowledge, settled.finding, place);
  const graded = settled.levels.length > 1;
  const options: Result[] = [
    ...settled.levels.map((level): Result => (graded ? { state: "present", level } : { state: "present" })),
    { state: "absent" },
    { state: "unknown" },
  ];
  const isPressed = (option: Result) =>
    result !== undefined &&
    result.value === undefined &&
    result.state === option.state &&
    result.level === option.level;
  return (
    <fieldset className="result">
      <legend className={question ? "hidden" : undefined}>{capital(name)}</legend>
      <div className={`result-buttons of-${options.length}`}>
        {options.map((option) => {
          const words = resultWords(option, question);
          return (
            <button
              key={words}
              type="button"
              aria-pressed={isPressed(option)}
              className={option.state === "unknown" ? "lesser" : undefined}
              onClick={() => onResult(option)}
            >
              {words}
            </button>
          );
        })}
      </div>
      {observation?.measure !== undefined && (
        <Measured
          observation={observation}
          result={result}
          units={units}
          keptAs={`${keptAs}/${settled.finding}`}
          onResult={onResult}
        />
      )}
    </fieldset>
  );
}

function Measured({
  observation,
  result,
  units,
  keptAs,
  onResult,
}: {
  readonly observation: NonNullable<ReturnType<typeof observationOf>>;
  readonly result: Result | undefined;
  readonly units: Units;
  readonly keptAs: string;
  readonly onResult: (result: Result) => void;
}) {
  const [text, setText] = useKept(keptAs, "");
  const [bad, setBad] = useState(false);
  const id = useId();
  const { measure } = observation;
  if (measure === undefined) return null;
  const isLength = measure.unit === "mm";
  const shown = isLength && units.length === "inch" ? "in" : measure.unit;
  const limit = (value: number) => (isLength ? shownLength(value, units) : `${value} ${measure.unit}`);
  return (
    <div className="measured">
      <label htmlFor={id}>
        Or measured: {measure.quantity} <span className="soft">({shown})</span>
      </label>
      <div className="with-unit">
        <input
          id={id}
          inputMode="decimal"
          autoComplete="off"
          value={text}
          aria-invalid={bad}
          aria-describedby={`${id}-limits`}
          onChange={(event) => setText(event.target.value)}
        />
        <button
          type="button"
          onClick={() => {
            const typed = typedNumber(text);
            setBad(typed === undefined);
            if (typed !== undefined)
              onResult(gradeOf(observation, isLength ? lengthInMm(typed, units) : typed));
          }}
        >
          Use
        </button>
      </div>
      <p className="small soft" id={`${id}-limits`}>
        {measure.atLeast
          .map((from, i) => `${levelWords(observation.levels[i] ?? "present")} from ${limit(from)}`)
          .join(", ")}
        {measure.limits !== undefined && `. ${measure.limits.join(" ")}`}
      </p>
      <p role="status" className="small">
        {bad && "Give a number, such as 2.5."}
        {result?.value !== undefined &&
          `Taken: ${limit(result.value)} - ${resultWords(result).toLowerCase()}.`}
      </p>
    </div>
  );
}
