import { carVariants } from "../lint/car-variants.ts";
import { checkLogic, evaluateLogic } from "../logic.ts";
import type { Knowledge } from "../schema/compiled.ts";

/** One thing about a car that a record asks for: which values of it will do. */
export interface CarLimit {
  /** The car's field, such as front.layout. */
  readonly path: string;
  readonly name: string;
  readonly values: readonly { readonly id: string; readonly name: string }[];
}

/** Everything that one way of having the record asks for; all of it must hold. */
export type CarNeeds = readonly CarLimit[];

/**
 * What a car must be like for a record with this condition; one of the ways listed has to hold.
 *
 * An empty list says every car. Of each field only the values that some car with the record has are listed.
 * Errors: `bad-logic` for a rule that may not be used.
 */
export function carNeeds(knowledge: Knowledge, when: unknown, places: readonly string[]): CarNeeds[] {
  if (when === undefined) return [];
  const ways = alternatives(when).map((rule) => needsOf(knowledge, rule, places));
  return ways.some((way) => way.length === 0) ? [] : ways;
}

function alternatives(when: unknown): unknown[] {
  if (typeof when !== "object" || when === null || !("or" in when) || !Array.isArray(when.or)) return [when];
  return when.or.flatMap(alternatives);
}

function needsOf(knowledge: Knowledge, rule: unknown, places: readonly string[]): CarLimit[] {
  const paths = new Set(checkLogic(rule));
  const cars = carVariants(knowledge, paths).filter(({ data }) =>
    places.some((place) => holds(knowledge, rule, data, place)),
  );
  return knowledge.car.attributes.flatMap((attribute) => {
    if (attribute.kind !== "choice" || !paths.has(attribute.path)) return [];
    const { path, name } = attribute;
    const seen = new Set(cars.map(({ data }) => valueAt(data, path)));
    const values = attribute.values.filter(({ id }) => seen.has(id));
    return values.length < attribute.values.length ? [{ path, name, values }] : [];
  });
}

function holds(knowledge: Knowledge, rule: unknown, car: object, place: string): boolean {
  const record = knowledge.places.places.find(({ id }) => id === place);
  const at = { id: place, axle: record?.axle ?? "none", side: record?.side ?? "none" };
  return evaluateLogic(rule, { ...car, place: at });
}

function valueAt(data: Readonly<Record<string, unknown>>, path: string): unknown {
  return path
    .split(".")
    .reduce<unknown>((value, key) => (value as Record<string, unknown> | undefined)?.[key], data);
}
