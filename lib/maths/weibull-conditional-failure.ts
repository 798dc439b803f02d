import { weibullCumulativeHazard } from "./weibull-cumulative-hazard.ts";

/**
 * Chance that a part which has survived to an age fails within a further stretch: 1 - R(age + further) / R(age).
 *
 * Units: age, further and life in the same unit.
 * Range: age >= 0, further >= 0, life > 0, shape > 0.
 * Source: NIST/SEMATECH e-Handbook of Statistical Methods, 8.1.6.2.
 */
export function weibullConditionalFailure(age: number, further: number, life: number, shape: number): number {
  return -Math.expm1(
    weibullCumulativeHazard(age, life, shape) - weibullCumulativeHazard(age + further, life, shape),
  );
}
