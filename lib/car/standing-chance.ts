import { weibullCumulativeHazard } from "../maths/weibull-cumulative-hazard.ts";
import { weibullMeanLife } from "../maths/weibull-mean-life.ts";

/**
 * Chance that a wear part has failed and still stands unmended.
 *
 * A part that fails is renewed, so that what is on the car now is not always the first one. The rate of failures is
 * taken as the smaller of the first part's Weibull hazard and the long-run renewal rate 1 / mean life; a failure
 * stands for `stands` before somebody mends it: P = 1 - exp(-integral of the rate over the last `stands`).
 *
 * Units: age, stands and life in the same unit (km or years).
 * Range: age >= 0, stands > 0, life > 0, shape > 0; the result is in [0, 1) and never falls with age for shape >= 1.
 * Source: renewal theorem (long-run rate 1 / mean); the smaller-of-two form is our own approximation.
 */
export function standingChance(age: number, stands: number, life: number, shape: number): number {
  const from = Math.max(0, age - stands);
  const renewal = 1 / weibullMeanLife(life, shape);
  if (shape <= 1) {
    const wear = weibullCumulativeHazard(age, life, shape) - weibullCumulativeHazard(from, life, shape);
    return -Math.expm1(-Math.max(wear, 0));
  }
  // Age at which the hazard reaches the renewal rate: shape / life * (t / life)^(shape - 1) = renewal.
  const crossing = life * ((renewal * life) / shape) ** (1 / (shape - 1));
  const wearTo = Math.min(age, crossing);
  const wear =
    wearTo > from
      ? weibullCumulativeHazard(wearTo, life, shape) - weibullCumulativeHazard(from, life, shape)
      : 0;
  const renewed = renewal * Math.max(0, age - Math.max(from, crossing));
  return -Math.expm1(-(wear + renewed));
}
