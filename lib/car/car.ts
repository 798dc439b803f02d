import { z } from "zod";
import { CornerwiseError } from "../errors.ts";
import type { CarAttribute, Knowledge } from "../knowledge/schema/compiled.ts";

/** A value of one attribute of a car. */
export type CarValue = string | number;

/** What is known of a car: attribute path (`drive`, `front.layout`, `odometerKm`) -> value; unknown ones are left out. */
export type Car = ReadonlyMap<string, CarValue>;

/** A car as programs send it: nested by the paths of `car.json`. Null means not known. */
export const CarInput = z.record(z.string(), z.unknown());
export type CarInput = z.infer<typeof CarInput>;

/** A car read from input, with what was passed over. */
export interface ReadCar {
  readonly car: Car;
  /** Keys that the knowledge does not ask for; they change nothing. */
  readonly unused: readonly string[];
}

/**
 * Reads a car from plain JSON by the attributes of the knowledge.
 *
 * Choice values are taken by id, name or other name, whatever the case. Unknown keys are listed, not refused.
 *
 * Errors: `bad-request` for a value that the attribute does not have, or a number outside its range.
 */
export function readCar(knowledge: Knowledge, input: CarInput): ReadCar {
  const car = new Map<string, CarValue>();
  const flat = flatten(input);
  for (const attribute of knowledge.car.attributes) {
    const value = flat.get(attribute.path);
    flat.delete(attribute.path);
    if (value === undefined || value === null || value === "") continue;
    car.set(
      attribute.path,
      attribute.kind === "choice" ? choice(attribute, value) : number(attribute, value),
    );
  }
  return { car, unused: [...flat.keys()] };
}

/** Writes a car back to plain nested JSON; `readCar` of it gives the same car. */
export function writeCar(car: Car): Record<string, unknown> {
  const out: Record<string, unknown> = {};
  for (const [path, value] of car) {
    const [head, tail] = path.split(".") as [string, string | undefined];
    if (tail === undefined) out[head] = value;
    else out[head] = { ...(out[head] as Record<string, unknown> | undefined), [tail]: value };
  }
  return out;
}

function flatten(input: CarInput): Map<string, unknown> {
  const flat = new Map<string, unknown>();
  for (const [key, value] of Object.entries(input)) {
    if (value !== null && typeof value === "object" && !Array.isArray(value)) {
      for (const [inner, v] of Object.entries(value)) flat.set(`${key}.${inner}`, v);
    } else flat.set(key, value);
  }
  return flat;
}

function choice(attribute: Extract<CarAttribute, { kind: "choice" }>, value: unknown): string {
  const wanted = String(value).trim().toLowerCase();
  for (const v of attribute.values) {
    if (v.id === wanted || [v.name, ...v.otherNames].some((n) => n.toLowerCase() === wanted)) return v.id;
  }
  throw new CornerwiseError(
    "bad-request",
    `car.${attribute.path}: ${JSON.stringify(value)} is not one of its values; use ${attribute.values
      .map((v) => `"${v.id}"`)
      .join(", ")}, or leave it out when it is not known.`,
    { path: `car.${attribute.path}`, value },
  );
}

function number(attribute: Extract<CarAttribute, { kind: "number" }>, value: unknown): number {
  const n = typeof value === "string" ? Number(value.replaceAll(/[\s,_]/g, "")) : value;
  if (typeof n !== "number" || !Number.isFinite(n) || n < attribute.min || n > attribute.max) {
    throw new CornerwiseError(
      "bad-request",
      `car.${attribute.path}: ${JSON.stringify(value)} is not a number of ${attribute.unit} from ${attribute.min} to ${
        attribute.max
      }; mend it, or leave it out when it is not known.`,
      { path: `car.${attribute.path}`, value },
    );
  }
  return n;
}
