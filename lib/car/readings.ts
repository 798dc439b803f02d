import { CornerwiseError } from "../errors.ts";
import type { CarAttribute, Knowledge } from "../knowledge/schema/compiled.ts";
import { type Car, type CarValue, writeCar } from "./car.ts";

/** One way in which the unknown attributes of a car may stand, with its chance. */
export interface Reading {
  readonly data: Readonly<Record<string, unknown>>;
  readonly probability: number;
}

type ChoiceAttribute = Extract<CarAttribute, { kind: "choice" }>;

/** Most combinations of unknown attributes that one rule may range over. */
const MAX_READINGS = 512;

/** Ways of the same unknown attributes, kept while a car is laid out: many rules ask for the same few. */
const KEPT = new WeakMap<Knowledge, WeakMap<Car, Map<string, readonly Reading[]>>>();

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
  const asked = knowledge.car.attributes.filter(
    (a): a is ChoiceAttribute => a.kind === "choice" && paths.has(a.path) && !car.has(a.path),
  );
  return waysOf(knowledge, car, asked).map(({ data, probability }) => ({
    data: { ...data, ...fixed },
    probability,
  }));
}

function waysOf(knowledge: Knowledge, car: Car, asked: readonly ChoiceAttribute[]): readonly Reading[] {
  const ofKnowledge = KEPT.get(knowledge) ?? new WeakMap<Car, Map<string, readonly Reading[]>>();
  KEPT.set(knowledge, ofKnowledge);
  const ofCar = ofKnowledge.get(car) ?? new Map<string, readonly Reading[]>();
  ofKnowledge.set(car, ofCar);
  const key = asked.map((a) => a.path).join(" ");
  const kept = ofCar.get(key);
  if (kept !== undefined) return kept;
  let open: { values: Map<string, CarValue>; probability: number }[] = [
    { values: new Map(car), probability: 1 },
  ];
  for (const attribute of asked) {
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
        `A rule ranges over more than ${MAX_READINGS} combinations of unknown attributes (${key}); split it.`,
        { paths: asked.map((a) => a.path) },
      );
    }
  }
  const ways = open.map(({ values, probability }) => ({ data: writeCar(values), probability }));
  ofCar.set(key, ways);
  return ways;
}
