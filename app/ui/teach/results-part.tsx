"use client";
import { useMemo } from "react";
import { capital, levelWords, nameOfFinding, nameOfPlace } from "../../text/names.ts";
import { stateWords } from "../../text/state-words.ts";
import { Fold } from "../fold.tsx";
import type { PartProps } from "./part-props.ts";
import { type Pickable, PickList } from "./pick-list.tsx";
import type { Setting } from "./setting.ts";

type Results = Setting["results"];

interface PickableFinding extends Pickable {
  readonly levels: readonly string[];
}

/** Results that the instructor wants, whatever the model would find. */
export function ResultsPart({ release, setting, onSetting }: PartProps) {
  const { knowledge } = release;
  const { results } = setting;
  const things = useMemo(
    () =>
      knowledge.observations.flatMap((o): PickableFinding[] =>
        o.places.map((place) => {
          const id = `${o.id}@${place}`;
          const name =
            o.places.length > 1 ? `${capital(o.name)}, ${nameOfPlace(knowledge, place)}` : capital(o.name);
          return { id, name, words: [name, ...o.otherNames].join(" ").toLowerCase(), levels: o.levels };
        }),
      ),
    [knowledge],
  );
  const set = (result: Results[number]) =>
    onSetting({ results: [...results.filter((r) => r.finding !== result.finding), result] });
  return (
    <Fold
      title={
        <>
          Set results by hand{" "}
          <span className="soft">
            ({results.length === 0 ? "none: all follow the model" : results.length})
          </span>
        </>
      }
    >
      <p className="small soft">
        A result that is set is found whatever is wrong with the car. All others follow the model, by chance
        and the same each time.
      </p>
      <ul className="plain-list" aria-label="Results set by hand">
        {results.map((result) => (
          <li key={result.finding} className="last-entry">
            <span>
              {capital(nameOfFinding(knowledge, result.finding))}: <strong>{stateWords(result)}</strong>
            </span>
            <button
              type="button"
              aria-label={`Leave to the model: ${nameOfFinding(knowledge, result.finding)}`}
              onClick={() => onSetting({ results: results.filter((r) => r !== result) })}
            >
              Leave to the model
            </button>
          </li>
        ))}
      </ul>
      {results.length < 100 && (
        <PickList label="What is to be found" things={things}>
          {({ id, name, levels }) => (
            <>
              {levels.length > 1 ? (
                levels.map((level) => (
                  <button
                    type="button"
                    key={level}
                    aria-label={`${name}: ${levelWords(level)}`}
                    onClick={() => set({ finding: id, state: "present", level })}
                  >
                    {capital(levelWords(level))}
                  </button>
                ))
              ) : (
                <button
                  type="button"
                  aria-label={`${name}: yes`}
                  onClick={() => set({ finding: id, state: "present" })}
                >
                  Yes
                </button>
              )}
              <button
                type="button"
                aria-label={`${name}: no`}
                onClick={() => set({ finding: id, state: "absent" })}
              >
                No
              </button>
            </>
          )}
        </PickList>
      )}
    </Fold>
  );
}
