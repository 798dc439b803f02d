import type { Knowledge } from "../schema/compiled.ts";

/** One kind of car: what logic rules read, and a name for messages. */
export interface CarVariant {
  readonly data: Readonly<Record<string, unknown>>;
  readonly name: string;
}

/** More kinds than this are not gone through; numbers then stay at their typical value. */
const MOST = 4096;

/**
 * Every kind of car that the paths tell apart: all values of a choice, least, typical and greatest of a number.
 *
 * Paths that no rule reads stay out, so that a few dozen kinds stand for all cars.
 */
export function carVariants(knowledge: Knowledge, paths: ReadonlySet<string>): CarVariant[] {
  const read = knowledge.car.attributes.filter((attribute) => paths.has(attribute.path));
  const valuesOf = (wide: boolean) =>
    read.map((attribute) => {
      if (attribute.kind === "choice") return attribute.values.map((value) => value.id);
      return wide ? [attribute.min, attribute.typical, attribute.max] : [attribute.typical];
    });
  const wide = valuesOf(true);
  const count = wide.reduce((product, values) => product * values.length, 1);
  let rows: (string | number)[][] = [[]];
  for (const values of count > MOST ? valuesOf(false) : wide) {
    rows = rows.flatMap((row) => values.map((value) => [...row, value]));
  }
  return rows.map((row) => {
    const data: Record<string, unknown> = {};
    read.forEach((attribute, i) => {
      put(data, attribute.path.split("."), row[i]);
    });
    const name = read.map((attribute, i) => `${attribute.path} ${row[i]}`).join(", ");
    return { data, name: name === "" ? "any car" : name };
  });
}

function put(data: Record<string, unknown>, path: readonly string[], value: unknown): void {
  const [key = "", ...rest] = path;
  if (rest.length === 0) {
    data[key] = value;
    return;
  }
  const inner = (Object.hasOwn(data, key) ? data[key] : {}) as Record<string, unknown>;
  put(inner, rest, value);
  data[key] = inner;
}
