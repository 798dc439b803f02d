"use client";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { capital, nameOfPlace } from "../../text/names.ts";
import { Choice } from "../choice.tsx";
import { TypedField } from "../typed-field.tsx";

type Fields = Readonly<Record<string, string>>;

const LENGTHS = [
  { value: "mm", name: "mm" },
  { value: "in", name: "inches" },
] as const;

/** What was measured, where, and on which circle. */
export function PlayFields({
  knowledge,
  quantity,
  fields,
  problems,
  ready,
  onFields,
}: {
  readonly knowledge: Knowledge;
  readonly quantity: Knowledge["limits"]["quantities"][number];
  readonly fields: Fields;
  readonly problems: Fields;
  readonly ready: boolean;
  readonly onFields: (fields: Fields) => void;
}) {
  const set = (change: Fields) => onFields({ ...fields, ...change });
  const { limits, quantities } = knowledge.limits;
  const { circle } = quantity;
  const own = limits.filter((l) => l.quantity === quantity.id);
  const countries = [...new Set(own.map((l) => l.country))].sort();
  const places = knowledge.observations.find((o) => o.id === quantity.observation)?.places ?? [];
  return (
    <>
      <Choice
        id="play-quantity"
        label="What was measured?"
        value={quantity.id}
        options={quantities.map((q) => ({ value: q.id, name: capital(q.name) }))}
        onChange={(value) =>
          set({ quantity: value, place: "", circle: "", ...(fields["unit"] === "deg" && { unit: "mm" }) })
        }
      />
      <p>
        <strong>How:</strong> {quantity.how}
      </p>
      <div className="fields">
        <TypedField
          id="play-value"
          label={circle === undefined ? "What is left" : "Movement"}
          value={fields["value"] ?? ""}
          disabled={!ready}
          problem={problems["value"]}
          onChange={(value) => set({ value })}
        />
        <Choice
          id="play-unit"
          label="In"
          value={fields["unit"] ?? "mm"}
          options={circle === undefined ? LENGTHS : [...LENGTHS, { value: "deg", name: "degrees" }]}
          onChange={(unit) => set({ unit })}
        />
        {circle !== undefined && (
          <>
            <TypedField
              id="play-circle"
              label={`Diameter of ${circle}`}
              value={fields["circle"] ?? ""}
              disabled={!ready}
              problem={problems["circle"]}
              onChange={(value) => set({ circle: value })}
            />
            <Choice
              id="play-circle-unit"
              label="Diameter in"
              value={fields["circleUnit"] ?? "mm"}
              options={LENGTHS}
              onChange={(circleUnit) => set({ circleUnit })}
            />
          </>
        )}
        {own.some((l) => l.by === "rim") && (
          <TypedField
            id="play-rim"
            label="Rim"
            unit="inches, as in the tyre's size"
            value={fields["rim"] ?? ""}
            disabled={!ready}
            problem={problems["rim"]}
            onChange={(rim) => set({ rim })}
          />
        )}
        <Choice
          id="play-country"
          label="Rules of"
          value={fields["country"] ?? ""}
          options={[
            { value: "", name: "every country held" },
            ...countries.map((c) => ({ value: c, name: c })),
          ]}
          onChange={(country) => set({ country })}
        />
        {places.length > 1 && (
          <Choice
            id="play-place"
            label="Where"
            value={fields["place"] ?? ""}
            options={[
              { value: "", name: "choose" },
              ...places.map((p) => ({ value: p, name: nameOfPlace(knowledge, p) })),
            ]}
            onChange={(place) => set({ place })}
          />
        )}
      </div>
    </>
  );
}
