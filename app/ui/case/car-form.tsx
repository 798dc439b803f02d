"use client";
import type { CarAttribute } from "../../../lib/knowledge/schema/compiled.ts";
import type { Units } from "../../text/amounts.ts";
import { Choice } from "../choice.tsx";
import type { CarFields } from "./car-fields.ts";

/** What is asked of the car; everything may be left out. */
export function CarForm({
  attributes,
  fields,
  problems,
  units,
  onFields,
  onUnits,
}: {
  readonly attributes: readonly CarAttribute[];
  readonly fields: CarFields;
  readonly problems: Readonly<Record<string, string>>;
  readonly units: Units;
  readonly onFields: (fields: CarFields) => void;
  readonly onUnits: (units: Partial<Units>) => void;
}) {
  const set = (id: string, value: string) => onFields({ ...fields, [id]: value });
  return (
    <div className="fields">
      {attributes.map((attribute) => {
        const id = `car-${attribute.id}`;
        const label = attribute.ask ?? attribute.name;
        if (attribute.kind === "choice") {
          const options = [
            { value: "", name: "not known" },
            ...attribute.values.map((v) => ({ value: v.id, name: v.name })),
          ];
          return (
            <Choice
              key={id}
              id={id}
              label={label}
              value={fields[attribute.id] ?? ""}
              options={options}
              onChange={(value) => set(attribute.id, value)}
            />
          );
        }
        const isDistance = attribute.unit === "km";
        const problem = problems[attribute.id];
        return (
          <div key={id}>
            <label htmlFor={id}>
              {label} <span className="soft">({isDistance ? units.distance : attribute.unit})</span>
            </label>
            <div className="with-unit">
              <input
                id={id}
                inputMode="decimal"
                autoComplete="off"
                value={fields[attribute.id] ?? ""}
                aria-invalid={problem !== undefined}
                aria-describedby={problem === undefined ? undefined : `${id}-problem`}
                onChange={(event) => set(attribute.id, event.target.value)}
              />
              {isDistance && (
                <select
                  aria-label="Distances in"
                  value={units.distance}
                  onChange={(event) => onUnits({ distance: event.target.value === "miles" ? "miles" : "km" })}
                >
                  <option value="km">km</option>
                  <option value="miles">miles</option>
                </select>
              )}
            </div>
            {problem !== undefined && (
              <p className="trouble small" id={`${id}-problem`}>
                {problem}
              </p>
            )}
          </div>
        );
      })}
    </div>
  );
}
