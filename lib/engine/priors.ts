import type { Car } from "../car/car.ts";
import { readings } from "../car/readings.ts";
import { standingChance } from "../car/standing-chance.ts";
import { type Usage, usage } from "../car/usage.ts";
import { checkLogic, evaluateLogic } from "../knowledge/logic.ts";
import type { CompiledFault, CompiledPart, Knowledge } from "../knowledge/schema/compiled.ts";
import type { PlaceIndex } from "./place-index.ts";

/** Priors are held below this: nothing is taken as certain before the car was looked at. */
const LARGEST_PRIOR = 0.6;

/** A suspect before it has its index. */
export interface Prior {
  readonly id: string;
  readonly fault: string;
  readonly part: string;
  readonly place: string;
  readonly prior: number;
}

/**
 * Chance of every fault at every place of this car before any finding, in the order of fault id and place.
 *
 * Chance = share of cars like this that have the part there, times the standing chance of its wear life (or its plain
 * share), with modifiers on life and odds, and the odds factor of everything that happened lately.
 */
export function suspectPriors(
  knowledge: Knowledge,
  car: Car,
  contexts: readonly string[],
  places: PlaceIndex,
): Prior[] {
  const parts = new Map(knowledge.parts.map((p) => [p.id, p]));
  const used = usage(knowledge, car);
  const out: Prior[] = [];
  for (const fault of knowledge.faults) {
    const part = parts.get(fault.part);
    if (part === undefined) continue;
    const rules = [part.when ?? true, fault.when ?? true, ...fault.modifiers.map((m) => m.when)];
    const paths = new Set(rules.flatMap((rule) => checkLogic(rule)));
    // Most faults are as likely at one place as at another: worked out once.
    const byPlace = [...paths].some((path) => path.startsWith("place."));
    let shared: number | undefined;
    for (const place of part.places) {
      const prior = shared ?? priorAt(knowledge, car, used, contexts, fault, part, place, places, paths);
      if (!byPlace) shared = prior;
      out.push({ id: `${fault.id}@${place}`, fault: fault.id, part: part.id, place, prior });
    }
  }
  return out;
}

function priorAt(
  knowledge: Knowledge,
  car: Car,
  used: Usage,
  contexts: readonly string[],
  fault: CompiledFault,
  part: CompiledPart,
  place: string,
  places: PlaceIndex,
  paths: ReadonlySet<string>,
): number {
  const record = places.byId.get(place);
  const fixed = {
    odometerKm: used.km,
    ageYears: used.years,
    place: { id: place, axle: record?.axle ?? "none", side: record?.side ?? "none" },
  };
  let sum = 0;
  for (const { data, probability } of readings(knowledge, car, paths, fixed)) {
    if (!evaluateLogic(part.when ?? true, data) || !evaluateLogic(fault.when ?? true, data)) continue;
    sum += probability * chanceOn(knowledge, used, contexts, fault, data);
  }
  return sum;
}

function chanceOn(
  knowledge: Knowledge,
  used: Usage,
  contexts: readonly string[],
  fault: CompiledFault,
  data: Readonly<Record<string, unknown>>,
): number {
  let life = 1;
  let odds = 1;
  for (const modifier of fault.modifiers) {
    if (!evaluateLogic(modifier.when, data)) continue;
    life *= modifier.life ?? 1;
    odds *= modifier.odds ?? 1;
  }
  for (const context of contexts) {
    if (Object.hasOwn(fault.contexts, context)) odds *= fault.contexts[context] ?? 1;
  }
  const base = fault.life;
  const { stands } = knowledge.car;
  let chance: number;
  if ("share" in base) chance = base.share;
  else if ("km" in base)
    chance = standingChance(used.km, base.stands ?? stands.km, base.km * life, base.shape);
  else chance = standingChance(used.years, base.stands ?? stands.years, base.years * life, base.shape);
  const scaled = (chance * odds) / (1 - chance + chance * odds);
  return Math.min(scaled, LARGEST_PRIOR);
}
