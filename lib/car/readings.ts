import { CornerwiseError } from "../errors.ts";
import type { Knowledge } from "../knowledge/schema/compiled.ts";
import { type Car, type CarValue, writeCar } from "./car.ts";

/** One way in which the unknown attributes of a car may stand, with its chance. */
export interface Reading {
  readonly data: Readonly<Record<string, unknown>>;
  readonly probability: number;
}

/** Most combinations of unknown attributes that one rule may range over. */
const MAX_READINGS = 512;

/**
 * All ways in which those attributes may stand that a rule asks for, each with its chance.
 *
 * Known attributes keep their value; an unknown choice takes each value with its share of the cars on the road.
 *
 * Errors: `bad-logic` when the paths range over more than 512 combinations.
 */
export function readings(
  knowledge: Knowledge,
  car: Car,
  paths: ReadonlySet<string>,
  fixed: Readonly<Record<string, unknown>>,
): Reading[] {
  let open: { values: Map<string, CarValue>; probability: number }[] = [
    { values: new Map(car), probability: 1 },
  ];
  for (const attribute of knowledge.car.attributes) {
    if (attribute.kind !== "choice" || car.has(attribute.path) || !paths.has(attribute.path)) continue;
    const total = attribute.values.reduce((sum, v) => sum + v.share, 0);
    open = open.flatMap((o) =>
      attribute.values.map((v) => ({
        values: new Map(o.values).set(attribute.path, v.id),
        probability: (o.probability * v.share) / total,
      })),
    );
    if (open.length > MAX_READINGS) {
      throw new CornerwiseError(
        "bad-logic",
        `A rule ranges over more than ${MAX_READINGS} combinations of unknown attributes (${[...paths].join(", ")}); split it.`,
        { paths: [...paths] },
      );
    }
  }
  return open.map(({ values, probability }) => ({ data: { ...writeCar(values), ...fixed }, probability }));
}
