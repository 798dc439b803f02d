import { standingChance } from "../car/standing-chance.ts";
import type { Usage } from "../car/usage.ts";
import type { CompiledFault, Knowledge } from "../knowledge/schema/compiled.ts";
import { scaledOdds } from "../maths/scaled-odds.ts";
import type { FaultReading } from "./fault-readings.ts";

/** Priors are held below this: nothing is taken as certain before the car was looked at. */
const LARGEST_PRIOR = 0.6;

/**
 * Chance that the fault is there now, on a car that has the part, before any finding.
 *
 * The standing chance of its wear life (or its plain share), with modifiers on life and odds, and the odds factor of
 * everything that happened lately. `used` is how far and how long the part has run; `longer` is the factor on how long its
 * faults stand (`standsLonger`), a plain share goes with it.
 */
export function standingNow(
  knowledge: Knowledge,
  used: Usage,
  longer: number,
  contexts: readonly string[],
  fault: CompiledFault,
  reading: Pick<FaultReading, "life" | "odds">,
): number {
  const { life } = reading;
  let { odds } = reading;
  for (const context of contexts) {
    if (Object.hasOwn(fault.contexts, context)) odds *= fault.contexts[context] ?? 1;
  }
  const base = fault.life;
  const { stands } = knowledge.car;
  const early = knowledge.car.early?.share ?? 0;
  let chance: number;
  if ("share" in base) chance = base.share * longer;
  else if ("km" in base)
    chance = standingChance(used.km, (base.stands ?? stands.km) * longer, base.km * life, base.shape, early);
  else
    chance = standingChance(
      used.years,
      (base.stands ?? stands.years) * longer,
      base.years * life,
      base.shape,
      early,
    );
  return Math.min(scaledOdds(chance, odds), LARGEST_PRIOR);
}
