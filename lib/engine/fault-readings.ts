import type { Car } from "../car/car.ts";
import { readings } from "../car/readings.ts";
import type { Usage } from "../car/usage.ts";
import { evaluateLogic, logicPaths } from "../knowledge/logic.ts";
import type { CompiledFault, CompiledPart, Knowledge } from "../knowledge/schema/compiled.ts";
import type { PlaceIndex } from "./place-index.ts";

/** One way in which the car may be built and used with the fault possible on it. */
export interface FaultReading {
  readonly probability: number;
  /** Product of the factors on the characteristic life of the modifiers that hold. */
  readonly life: number;
  /** Product of their factors on the odds. */
  readonly odds: number;
  /** Which of the fault's modifiers hold, by their order in the record. */
  readonly modifiers: readonly number[];
}

/** Attributes of the car and the place that the fault's rules and its part's ask for. */
export function faultPaths(fault: CompiledFault, part: CompiledPart): ReadonlySet<string> {
  const rules = [part.when ?? true, fault.when ?? true, ...fault.modifiers.map((m) => m.when)];
  return new Set(rules.flatMap((rule) => logicPaths(rule)));
}

/**
 * The ways in which what is not known of the car may stand, of those that can have the fault at the place.
 *
 * Their probabilities add up to the share of cars like this that have the part there.
 */
export function faultReadings(
  knowledge: Knowledge,
  car: Car,
  used: Usage,
  fault: CompiledFault,
  part: CompiledPart,
  place: string,
  places: PlaceIndex,
  paths: ReadonlySet<string>,
): FaultReading[] {
  const record = places.byId.get(place);
  const fixed = {
    odometerKm: used.km,
    ageYears: used.years,
    place: { id: place, axle: record?.axle ?? "none", side: record?.side ?? "none" },
  };
  const out: FaultReading[] = [];
  for (const { data, probability } of readings(knowledge, car, paths, fixed)) {
    if (!evaluateLogic(part.when ?? true, data) || !evaluateLogic(fault.when ?? true, data)) continue;
    let life = 1;
    let odds = 1;
    const modifiers: number[] = [];
    fault.modifiers.forEach((modifier, i) => {
      if (!evaluateLogic(modifier.when, data)) return;
      life *= modifier.life ?? 1;
      odds *= modifier.odds ?? 1;
      modifiers.push(i);
    });
    out.push({ probability, life, odds, modifiers });
  }
  return out;
}
