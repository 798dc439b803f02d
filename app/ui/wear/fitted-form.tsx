"use client";
import { useMemo } from "react";
import type { CaseState } from "../../../lib/case/case-state.ts";
import { readCar } from "../../../lib/car/car.ts";
import { fittedThatHold } from "../../../lib/engine/index.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import type { EntryBody } from "../../store/new-entry.ts";
import { useDraft } from "../../store/use-draft.ts";
import { distanceInKm, typedNumber, type Units } from "../../text/amounts.ts";
import { fieldsOfDraft } from "../../text/draft-fields.ts";
import { capital, nameOfPlace } from "../../text/names.ts";
import { Choice } from "../choice.tsx";
import { TypedField } from "../typed-field.tsx";

const EVERYWHERE = "";

/** Enters that a part was renewed, and when. */
export function FittedForm({
  knowledge,
  state,
  parts,
  units,
  append,
}: {
  readonly knowledge: Knowledge;
  readonly state: CaseState;
  /** Ids of wear parts that this car can have. */
  readonly parts: readonly string[];
  readonly units: Units;
  readonly append: (...bodies: readonly EntryBody[]) => void;
}) {
  const [draft, setDraft, ready] = useDraft(`${state.caseId}/fitted`);
  const fields = fieldsOfDraft(draft);
  const set = (change: Readonly<Record<string, string>>) =>
    setDraft(JSON.stringify({ ...fields, ...change }));
  const options = useMemo(
    () =>
      knowledge.parts
        .filter((p) => parts.includes(p.id))
        .map((p) => ({ value: p.id, name: capital(p.name) }))
        .sort((a, b) => a.name.localeCompare(b.name, "en-GB")),
    [knowledge, parts],
  );
  const part = knowledge.parts.find((p) => p.id === fields["part"]);
  const read = readFitted(knowledge, state, units, part?.id, fields);
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        if (read.entry === undefined) return;
        append(read.entry);
        setDraft("");
      }}
    >
      <div className="fields">
        <Choice
          id="fitted-part"
          label="Part"
          value={part?.id ?? ""}
          options={[{ value: "", name: "choose" }, ...options]}
          onChange={(value) => set({ part: value, place: EVERYWHERE })}
        />
        {part !== undefined && part.places.length > 1 && (
          <Choice
            id="fitted-place"
            label="Where"
            value={fields["place"] ?? EVERYWHERE}
            options={[
              { value: EVERYWHERE, name: "all of them" },
              ...part.places.map((p) => ({ value: p, name: nameOfPlace(knowledge, p) })),
            ]}
            onChange={(value) => set({ place: value })}
          />
        )}
        <TypedField
          id="fitted-at"
          label="Fitted at"
          unit={`${units.distance} on the clock; 0: known to be the first`}
          value={fields["at"] ?? ""}
          disabled={!ready}
          problem={read.problems["at"]}
          onChange={(value) => set({ at: value })}
        />
        <TypedField
          id="fitted-years"
          label="Or fitted"
          unit="years ago"
          value={fields["years"] ?? ""}
          disabled={!ready}
          problem={read.problems["years"]}
          onChange={(value) => set({ years: value })}
        />
      </div>
      {read.odd !== undefined && <p className="trouble">{read.odd}</p>}
      <button type="submit" className="wide" disabled={read.entry === undefined}>
        Put it in the car&apos;s history
      </button>
    </form>
  );
}

interface ReadFitted {
  readonly entry?: EntryBody;
  readonly problems: Readonly<Record<string, string>>;
  /** Why it cannot be of this car. */
  readonly odd?: string;
}

function readFitted(
  knowledge: Knowledge,
  state: CaseState,
  units: Units,
  part: string | undefined,
  fields: Readonly<Record<string, string>>,
): ReadFitted {
  const problems: Record<string, string> = {};
  const numberOf = (id: string): number | undefined => {
    const text = fields[id]?.trim() ?? "";
    if (text === "") return undefined;
    const number = typedNumber(text);
    if (number === undefined || number < 0)
      problems[id] =
        `"${text}" is no ${id === "at" ? "reading of the clock" : "number of years"}; give a number from 0.`;
    return number;
  };
  const at = numberOf("at");
  const yearsAgo = numberOf("years");
  if (part === undefined || Object.keys(problems).length > 0 || (at === undefined && yearsAgo === undefined))
    return { problems };
  const place = fields["place"] ?? EVERYWHERE;
  const fitted = {
    part,
    ...(place !== EVERYWHERE && { place }),
    ...(at !== undefined && { atKm: distanceInKm(at, units) }),
    ...(yearsAgo !== undefined && { yearsAgo }),
  };
  let fits: boolean;
  try {
    fits = fittedThatHold(knowledge, readCar(knowledge, state.car).car, [fitted]).length > 0;
  } catch {
    fits = false;
  }
  if (!fits)
    return {
      problems,
      odd: "The part would be older than the car. Mend the figure, or the car's own distance and age in the case.",
    };
  return { problems, entry: { kind: "fitted", ...fitted } };
}
