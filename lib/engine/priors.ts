import type { Car } from "../car/car.ts";
import { type Usage, usage } from "../car/usage.ts";
import type { CompiledFault, CompiledPart, Knowledge } from "../knowledge/schema/compiled.ts";
import { faultPaths, faultReadings } from "./fault-readings.ts";
import { type FittedPart, partAges } from "./part-ages.ts";
import type { PlaceIndex } from "./place-index.ts";
import { standsLonger } from "../car/stands-longer.ts";
import { standingNow } from "./standing-now.ts";

/** A suspect before it has its index. */
export interface Prior {
  readonly id: string;
  readonly fault: string;
  readonly part: string;
  readonly place: string;
  readonly prior: number;
  /** Share of cars like this one that have the part there at all; 1 when it is known. */
  readonly exists: number;
}

/**
 * Chance of every fault at every place of this car before any finding, in the order of fault id and place.
 *
 * Chance = share of cars like this that have the part there, times the standing chance of its wear life (or its plain
 * share), with modifiers on life and odds, and the odds factor of everything that happened lately. A part of its own age
 * (`fitted`) goes by that.
 */
export function suspectPriors(
  knowledge: Knowledge,
  car: Car,
  contexts: readonly string[],
  places: PlaceIndex,
  fitted: readonly FittedPart[] = [],
): Prior[] {
  const parts = new Map(knowledge.parts.map((p) => [p.id, p]));
  const used = usage(knowledge, car);
  const kmPerYear = used.km > 0 && used.years > 0 ? used.km / used.years : knowledge.car.kmPerYear.value;
  const ageOf = partAges(knowledge, car, used, kmPerYear, places, fitted);
  const out: Prior[] = [];
  for (const fault of knowledge.faults) {
    const part = parts.get(fault.part);
    if (part === undefined) continue;
    const paths = faultPaths(fault, part);
    // Most faults are as likely at one place as at another: worked out once.
    const byPlace = [...paths].some((path) => path.startsWith("place."));
    let shared: { prior: number; exists: number } | undefined;
    for (const place of part.places) {
      const age = ageOf(part.id, place);
      const asOthers = age.ownAge ? undefined : shared;
      const chances =
        asOthers ?? priorAt(knowledge, car, used, age, contexts, fault, part, place, places, paths);
      if (!byPlace && !age.ownAge) shared = chances;
      out.push({ id: `${fault.id}@${place}`, fault: fault.id, part: part.id, place, ...chances });
    }
  }
  return out;
}

function priorAt(
  knowledge: Knowledge,
  car: Car,
  used: Usage,
  age: Usage,
  contexts: readonly string[],
  fault: CompiledFault,
  part: CompiledPart,
  place: string,
  places: PlaceIndex,
  paths: ReadonlySet<string>,
): { prior: number; exists: number } {
  const longer = standsLonger(knowledge, used);
  let prior = 0;
  let exists = 0;
  for (const reading of faultReadings(knowledge, car, used, fault, part, place, places, paths)) {
    exists += reading.probability;
    prior += reading.probability * standingNow(knowledge, age, longer, contexts, fault, reading);
  }
  return { prior, exists };
}
