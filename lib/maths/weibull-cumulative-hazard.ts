/**
 * Cumulative hazard of a Weibull life, H(t) = (t / life)^shape; the chance of failing by t is 1 - exp(-H).
 *
 * Units: age and life in the same unit (km or years).
 * Range: age >= 0, life > 0, shape > 0.
 * Source: NIST/SEMATECH e-Handbook of Statistical Methods, 8.1.6.2.
 */
export function weibullCumulativeHazard(age: number, life: number, shape: number): number {
  return (age / life) ** shape;
}
