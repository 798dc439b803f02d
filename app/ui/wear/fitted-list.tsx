"use client";
import type { CaseState } from "../../../lib/case/case-state.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import type { EntryBody } from "../../store/new-entry.ts";
import { shownDistance, type Units } from "../../text/amounts.ts";
import { capital, nameOfPart, nameOfPlace } from "../../text/names.ts";

/** Parts whose age was entered; each can be taken back. */
export function FittedList({
  knowledge,
  state,
  odd,
  units,
  append,
}: {
  readonly knowledge: Knowledge;
  readonly state: CaseState;
  /** Those that this car cannot have; they do not count. */
  readonly odd: CaseState["fitted"];
  readonly units: Units;
  readonly append: (...bodies: readonly EntryBody[]) => void;
}) {
  if (state.fitted.length === 0)
    return (
      <p className="small soft">Nothing entered: every part counts as old as the car, or renewed unknown.</p>
    );
  return (
    <ul className="plain-list">
      {state.fitted.map((fitted) => {
        const { entry, part, place, atKm, yearsAgo } = fitted;
        const name = `${capital(nameOfPart(knowledge, part))}${place === undefined ? "" : `, ${nameOfPlace(knowledge, place)}`}`;
        const when = [
          atKm === 0
            ? "known to be the first"
            : atKm !== undefined &&
              `fitted at ${shownDistance(atKm, units).toLocaleString("en-GB")} ${units.distance}`,
          yearsAgo !== undefined && `fitted ${yearsAgo} years ago`,
        ]
          .filter(Boolean)
          .join(", ");
        return (
          <li key={entry} className="last-entry">
            <span>
              {name}: {when}
              {odd.includes(fitted) && (
                <span className="trouble small detail">
                  Does not count: this car is younger than that, or has no such part. Take it back and enter
                  it anew.
                </span>
              )}
            </span>
            <button
              type="button"
              className="no-print"
              aria-label={`Take back: ${name}`}
              onClick={() => append({ kind: "retracted", entry })}
            >
              Take back
            </button>
          </li>
        );
      })}
    </ul>
  );
}
