"use client";
import type { Advice } from "../../../lib/knowledge/schema/advice.ts";
import type { Colleague } from "../../sync/replies.ts";
import { Choice, type ChoiceOption } from "../choice.tsx";
import { Fold } from "../fold.tsx";
import { urgencyWords } from "./urgency-mark.tsx";
import { NO_LEVELS, NOTHING_PICKED, type Wanted } from "./wanted.ts";

const SORTS = [
  { value: "urgent", name: "Urgency" },
  { value: "changed", name: "Last change" },
  { value: "oldest", name: "Longest open" },
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
  named,
  onWanted,
  onText,
}: {
  readonly wanted: Wanted;
  readonly levels: Advice["levels"];
  readonly people: readonly Colleague[];
  /** Names without an account that have cases. */
  readonly names: readonly string[];
  /** Whoever works here has said their name. */
  readonly named: boolean;
  readonly onWanted: (change: Partial<Wanted>) => void;
  readonly onText: (text: string) => void;
}) {
  const who = whoOptions(wanted.who, people, names, named);
  return (
    <div className="case-filters" role="search" aria-label="Cases">
      <div className="case-search">
        <label htmlFor="case-search">Search vehicle, plate or customer</label>
        <input
          id="case-search"
          type="search"
          autoComplete="off"
          maxLength={100}
          value={wanted.text}
          onChange={(event) => onText(event.target.value)}
        />
      </div>
      <Fold title={`Pick and order: ${inWords(wanted, levels, who)}`}>
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
            options={who}
            onChange={(value) => onWanted({ who: value })}
          />
          <Choice
            id="case-sort"
            label="Order by"
            value={wanted.sort}
            options={SORTS}
            onChange={(sort) => onWanted({ sort })}
          />
        </div>
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

/** What is picked, on the line that opens the picks. */
function inWords(
  { state, who, sort, levels: picked, invented }: Wanted,
  levels: Advice["levels"],
  people: readonly ChoiceOption<string>[],
): string {
  const nameIn = (options: readonly ChoiceOption<string>[], value: string): string =>
    options.find((option) => option.value === value)?.name ?? value;
  return [
    nameIn(STATES, state).toLowerCase(),
    ...picked.map((id) => levelWords(id, levels).toLowerCase()),
    ...(who === "" ? [] : [who === "nobody" ? "nobody has it" : `with ${nameIn(people, who)}`]),
    ...(invented === "shown" ? [] : [`invented ones ${nameIn(INVENTED, invented).toLowerCase()}`]),
    `by ${nameIn(SORTS, sort).toLowerCase()}`,
  ].join(", ");
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

function whoOptions(
  who: string,
  people: readonly Colleague[],
  names: readonly string[],
  named: boolean,
): ChoiceOption<string>[] {
  const options = [
    { value: "", name: "Everybody" },
    ...(named ? [{ value: "me", name: "Me" }] : []),
    { value: "nobody", name: "Nobody" },
    ...people.map(({ id, name }) => ({ value: `account:${id}`, name })),
    ...names.map((name) => ({ value: `name:${name}`, name })),
  ];
  // As the address says it, even when nobody here knows the name any more.
  return options.some(({ value }) => value === who)
    ? options
    : [...options, { value: who, name: who.replace(/^(account|name):/, "") }];
}
