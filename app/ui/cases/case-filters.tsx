"use client";
import type { Advice } from "../../../lib/knowledge/schema/advice.ts";
import type { Colleague } from "../../sync/replies.ts";
import { Choice } from "../choice.tsx";
import { Fold } from "../fold.tsx";
import { urgencyWords } from "./urgency-mark.tsx";
import { NO_LEVELS, NOTHING_PICKED, type Wanted } from "./wanted.ts";

const SORTS = [
  { value: "urgent", name: "Most urgent first" },
  { value: "changed", name: "Last changed first" },
  { value: "oldest", name: "Longest open first" },
] as const;
const STATES = [
  { value: "open", name: "Open cases" },
  { value: "closed", name: "With a verdict" },
  { value: "all", name: "All cases" },
] as const;
const INVENTED = [
  { value: "shown", name: "Shown" },
  { value: "hidden", name: "Left out" },
  { value: "only", name: "Only these" },
] as const;

/** What the list is searched for, narrowed to and sorted by. */
export function CaseFilters({
  wanted,
  levels,
  people,
  names,
  onWanted,
  onText,
}: {
  readonly wanted: Wanted;
  readonly levels: Advice["levels"];
  readonly people: readonly Colleague[];
  /** Names without an account that have cases. */
  readonly names: readonly string[];
  readonly onWanted: (change: Partial<Wanted>) => void;
  readonly onText: (text: string) => void;
}) {
  const folded = wanted.levels.length + (wanted.invented === "shown" ? 0 : 1);
  return (
    <div className="case-filters" role="search" aria-label="Cases">
      <div className="case-search">
        <label htmlFor="case-search">Search the cases by vehicle, plate or customer</label>
        <input
          id="case-search"
          type="search"
          autoComplete="off"
          maxLength={100}
          value={wanted.text}
          onChange={(event) => onText(event.target.value)}
        />
      </div>
      <div className="filter-picks">
        <Choice
          id="case-state"
          label="Show"
          value={wanted.state}
          options={STATES}
          onChange={(state) => onWanted({ state })}
        />
        <Choice
          id="case-who"
          label="Who has it"
          value={wanted.who}
          options={whoOptions(wanted.who, people, names)}
          onChange={(who) => onWanted({ who })}
        />
        <Choice
          id="case-sort"
          label="Order"
          value={wanted.sort}
          options={SORTS}
          onChange={(sort) => onWanted({ sort })}
        />
      </div>
      <Fold
        title={folded === 0 ? "More filters" : `More filters (${folded} in use)`}
        openAtFirst={folded > 0}
      >
        <fieldset className="level-picks">
          <legend>How urgent</legend>
          {[...levels.map(({ id }) => id), ...NO_LEVELS].map((id) => (
            <label key={id} className="tick">
              <input
                type="checkbox"
                checked={wanted.levels.includes(id)}
                onChange={({ target }) =>
                  onWanted({
                    levels: target.checked
                      ? [...wanted.levels, id]
                      : wanted.levels.filter((other) => other !== id),
                  })
                }
              />
              <span>{levelWords(id, levels)}</span>
            </label>
          ))}
        </fieldset>
        <div className="filter-picks">
          <Choice
            id="case-invented"
            label="Invented cases"
            value={wanted.invented}
            options={INVENTED}
            onChange={(invented) => onWanted({ invented })}
          />
        </div>
      </Fold>
      {isNarrowed(wanted) && (
        <button
          type="button"
          className="plain"
          onClick={() => onWanted({ ...NOTHING_PICKED, sort: wanted.sort })}
        >
          Show all open cases
        </button>
      )}
    </div>
  );
}

export const isNarrowed = (wanted: Wanted): boolean =>
  wanted.state !== "open" ||
  wanted.levels.length > 0 ||
  wanted.who !== "" ||
  wanted.invented !== "shown" ||
  wanted.text !== "";

function levelWords(id: string, levels: Advice["levels"]): string {
  if (id === "unknown") return urgencyWords(undefined, levels);
  return urgencyWords(id === "nothing-told" ? { is: id } : { is: "level", level: id, danger: 0 }, levels);
}

function whoOptions(who: string, people: readonly Colleague[], names: readonly string[]) {
  const options = [
    { value: "", name: "Everybody" },
    { value: "me", name: "Me" },
    { value: "nobody", name: "Nobody" },
    ...people.map(({ id, name }) => ({ value: `account:${id}`, name })),
    ...names.map((name) => ({ value: `name:${name}`, name })),
  ];
  // As the address says it, even when nobody here knows the name any more.
  return options.some(({ value }) => value === who)
    ? options
    : [...options, { value: who, name: who.replace(/^(account|name):/, "") }];
}
