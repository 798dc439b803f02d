import { weibullCumulativeHazard } from "../maths/weibull-cumulative-hazard.ts";
import { weibullMeanLife } from "../maths/weibull-mean-life.ts";

/**
 * Chance that a wear part has failed and still stands unmended.
 *
 * A part that fails is renewed, so that what is on the car now is not always the first one. The rate of failures is
 * taken as the smaller of the first part's Weibull hazard and the long-run renewal rate 1 / mean life, but never below
 * `early` times that rate: some parts are faulty from new. A failure stands for `stands` before somebody mends it:
 * P = 1 - exp(-integral of the rate over the last `stands`).
 *
 * Units: age, stands and life in the same unit (km or years).
 * Range: age >= 0, stands > 0, life > 0, shape > 0, early in [0, 1]; the result is in [0, 1) and never falls with age for
 *        shape >= 1. `early` counts only where wear makes the hazard rise (shape > 1).
 * Source: renewal theorem (long-run rate 1 / mean); the smaller-of-two form and the floor are our own approximation.
 */
export function standingChance(age: number, stands: number, life: number, shape: number, early = 0): number {
  const from = Math.max(0, age - stands);
  const renewal = 1 / weibullMeanLife(life, shape);
  if (shape <= 1) {
    const wear = weibullCumulativeHazard(age, life, shape) - weibullCumulativeHazard(from, life, shape);
    return -Math.expm1(-Math.max(wear, 0));
  }
  // Age at which the hazard reaches a rate: shape / life * (t / life)^(shape - 1) = rate.
  const reaches = (rate: number): number => life * ((rate * life) / shape) ** (1 / (shape - 1));
  const worn = reaches(renewal);
  const wears = Math.min(reaches(early * renewal), worn);
  /** How much of the last `stands` lies between two ages, from where to where. */
  const within = (a: number, b: number): [number, number] => {
    const start = Math.max(from, a);
    return [start, Math.max(start, Math.min(age, b))];
  };
  const [newFrom, newTo] = within(0, wears);
  const [wearFrom, wearTo] = within(wears, worn);
  const [oldFrom, oldTo] = within(worn, Infinity);
  const wear = weibullCumulativeHazard(wearTo, life, shape) - weibullCumulativeHazard(wearFrom, life, shape);
  return -Math.expm1(-(early * renewal * (newTo - newFrom) + wear + renewal * (oldTo - oldFrom)));
}
