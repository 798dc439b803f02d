import type { CaseCar } from "../../../lib/case/entries.ts";
import type { CarAttribute } from "../../../lib/knowledge/schema/compiled.ts";
import { distanceInKm, shownDistance, typedNumber, type Units } from "../../text/amounts.ts";

/** What stands in the fields of the car form, by attribute id; numbers as typed, in the shown unit. */
export type CarFields = Readonly<Record<string, string>>;

/** Value of a car's field by its path: `front.layout`. */
export function valueAt(car: CaseCar, path: string): string | number | undefined {
  let at: unknown = car;
  for (const key of path.split(".")) at = (at as Record<string, unknown> | undefined)?.[key];
  return typeof at === "string" || typeof at === "number" ? at : undefined;
}

/** A car as form fields. */
export function fieldsOfCar(attributes: readonly CarAttribute[], car: CaseCar, units: Units): CarFields {
  const fields: Record<string, string> = {};
  for (const attribute of attributes) {
    const value = valueAt(car, attribute.path);
    if (value === undefined) continue;
    const isDistance = attribute.kind === "number" && attribute.unit === "km";
    fields[attribute.id] = String(isDistance ? shownDistance(Number(value), units) : value);
  }
  return fields;
}

export interface ReadFields {
  readonly car: CaseCar;
  /** Attribute id -> what is wrong with its field. */
  readonly problems: Readonly<Record<string, string>>;
}

/** Form fields as a car; empty fields are left out. */
export function carOfFields(
  attributes: readonly CarAttribute[],
  fields: CarFields,
  units: Units,
): ReadFields {
  const car: Record<string, unknown> = {};
  const problems: Record<string, string> = {};
  for (const attribute of attributes) {
    const text = fields[attribute.id]?.trim() ?? "";
    if (text === "") continue;
    let value: string | number = text;
    if (attribute.kind === "number") {
      const typed = typedNumber(text);
      const number = typed !== undefined && attribute.unit === "km" ? distanceInKm(typed, units) : typed;
      if (number === undefined || number < attribute.min || number > attribute.max) {
        problems[attribute.id] = `Give a number, or leave it empty when it is not known.`;
        continue;
      }
      value = number;
    }
    const [head, tail] = attribute.path.split(".") as [string, string | undefined];
    car[head] = tail === undefined ? value : { ...(car[head] as object | undefined), [tail]: value };
  }
  return { car: car as CaseCar, problems };
}

/** The car in one line, for the head of the sheet. */
export function carLine(attributes: readonly CarAttribute[], car: CaseCar, units: Units): string {
  const parts: string[] = [];
  for (const attribute of attributes) {
    const value = valueAt(car, attribute.path);
    if (value === undefined) continue;
    if (attribute.kind === "choice") {
      const name = attribute.values.find((v) => v.id === value)?.name ?? String(value);
      parts.push(`${attribute.name.toLowerCase()}: ${name}`);
    } else if (attribute.unit === "km") {
      parts.push(`${shownDistance(Number(value), units).toLocaleString("en-GB")} ${units.distance}`);
    } else parts.push(`${value} ${attribute.unit}`);
  }
  return parts.join("; ");
}
