import type { ReactNode } from "react";
import { hoursWords } from "../../text/amounts.ts";
import type { Tally } from "./replies.ts";

/** Figures of a tally, each with its short name; on a phone the name stands beside the figure, else above the column. */
const FIGURES: readonly { readonly name: string; readonly of: (tally: Tally) => ReactNode }[] = [
  { name: "Ended", of: ({ ended, attempts }) => `${ended} of ${attempts}` },
  { name: "Right", of: ({ right, ended }) => outOf(right, ended) },
  { name: "Right part", of: ({ rightPart, ended }) => outOf(rightPart, ended) },
  { name: "On the ramp", of: (tally) => minutes(tally, tally.minutes) },
  { name: "Best way", of: (tally) => minutes(tally, tally.bestMinutes) },
  { name: "Lost", of: (tally) => minutes(tally, tally.lostMinutes) },
  { name: "Wrong parts", of: (tally) => count(tally, tally.wrongParts) },
  { name: "Unsafe steps", of: (tally) => count(tally, tally.unsafe) },
  { name: "Cautions skipped", of: (tally) => count(tally, tally.cautionsSkipped) },
  { name: "Jumped", of: (tally) => count(tally, tally.jumped) },
  { name: "How sure", of: ({ confidence }) => shareWords(confidence) },
  { name: "Brier", of: ({ brier }) => brier?.toFixed(2) ?? "-" },
];

const outOf = (some: number, all: number): string => (all === 0 ? "-" : `${some} of ${all}`);
const minutes = ({ ended }: Tally, sum: number): string => (ended === 0 ? "-" : hoursWords(sum));
const count = ({ ended }: Tally, some: number): string => (ended === 0 ? "-" : String(some));

/** A share as whole percents. */
export const shareWords = (share: number | null | undefined): string =>
  share === undefined || share === null ? "-" : `${Math.round(share * 100)} %`;

/** Tallies side by side, a row each. */
export function TallyTable<T extends Tally & { readonly name: string }>({
  caption,
  what,
  rows,
  keyOf,
  onPick,
}: {
  readonly caption: string;
  /** Name of the first column. */
  readonly what: string;
  readonly rows: readonly T[];
  readonly keyOf: (row: T) => string;
  readonly onPick: (row: T) => void;
}) {
  return (
    <table className="figures tallies">
      <caption>{caption}</caption>
      <thead>
        <tr>
          <th scope="col">{what}</th>
          {FIGURES.map(({ name }) => (
            <th key={name} scope="col">
              {name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={keyOf(row)}>
            <th scope="row">
              <button type="button" className="plain" onClick={() => onPick(row)}>
                {row.name}
              </button>
            </th>
            {FIGURES.map(({ name, of }) => (
              <td key={name}>
                <span className="cell-name">{name}</span> {of(row)}
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
