import type { CaseCar } from "../../../lib/case/entries.ts";
import { evaluateLogic } from "../../../lib/knowledge/logic.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { valueAt } from "../case/car-fields.ts";

/** The car that is drawn: what was told, and the commonest value of every attribute that was not. */
export interface LikelyCar {
  /** Attribute path -> value. */
  readonly values: ReadonlyMap<string, string | number>;
  /** Names of the attributes that were not told and change the drawing. */
  readonly assumed: ReadonlySet<string>;
}

/** Fills what was not told with what most cars have. */
export function likelyCar(knowledge: Knowledge, car: CaseCar): LikelyCar {
  const values = new Map<string, string | number>();
  const assumed = new Set<string>();
  for (const attribute of knowledge.car.attributes) {
    const told = valueAt(car, attribute.path);
    if (told !== undefined) values.set(attribute.path, told);
    else if (attribute.kind === "number") values.set(attribute.path, attribute.typical);
    else {
      const [commonest] = attribute.values.toSorted((a, b) => b.share - a.share);
      if (commonest !== undefined) values.set(attribute.path, commonest.id);
      assumed.add(attribute.path);
    }
  }
  return { values, assumed };
}

/** Parts that the drawn car has at one place or another. */
export function partsOf(knowledge: Knowledge, { values }: LikelyCar): ReadonlySet<string> {
  const data: Record<string, unknown> = {};
  for (const [path, value] of values) {
    const [head, tail] = path.split(".") as [string, string | undefined];
    data[head] = tail === undefined ? value : { ...(data[head] as object | undefined), [tail]: value };
  }
  const places = new Map(knowledge.places.places.map((place) => [place.id, place]));
  const has = knowledge.parts.filter(
    (part) =>
      part.when === undefined ||
      part.places.some((id) => evaluateLogic(part.when, { ...data, place: places.get(id) })),
  );
  return new Set(has.map((part) => part.id));
}
