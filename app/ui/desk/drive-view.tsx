import type { DriveAdvice } from "../../../lib/engine/index.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { chanceWords, percent } from "../../text/chance-words.ts";
import { capital, nameOfSuspect } from "../../text/names.ts";

/** Share of its bar from which a dangerous fault is worth a line. */
const WORTH_NAMING = 0.03;

/** What is worked out about driving, with the faults that it rests on. */
export function DriveView({
  knowledge,
  drive,
}: {
  readonly knowledge: Knowledge;
  readonly drive: DriveAdvice;
}) {
  const named = drive.because.filter(({ chance, bar }) => chance / bar >= WORTH_NAMING);
  const levels = knowledge.advice?.levels ?? [];
  return (
    <>
      <p className="level">{drive.name}</p>
      {named.length === 0 ? (
        <p>
          No fault that could be dangerous stands out from what was told. That proves nothing about the car.
        </p>
      ) : (
        <>
          <p>What could be dangerous, the gravest first:</p>
          <ul>
            {named.map(({ suspect, chance, bar }) => (
              <li key={suspect}>
                {capital(nameOfSuspect(knowledge, suspect))}: <strong>{chanceWords(chance)}</strong>{" "}
                <span className="soft number">
                  ({percent(chance)}; enough by itself from {percent(bar)})
                </span>
              </li>
            ))}
          </ul>
        </>
      )}
      <p className="small soft number">
        Each counts with its chance over its own bar; all of them together come to {drive.danger.toFixed(1)}.{" "}
        {levels
          .filter((level) => level.from > 0)
          .map((level) => `From ${level.from} on: ${level.name.toLowerCase()}.`)
          .join(" ")}{" "}
        No answer here says that the car is fit for the road.
      </p>
    </>
  );
}
