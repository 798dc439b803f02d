/**
 * Hazard (failures per unit of age) of a Weibull life, (shape / life) * (t / life)^(shape - 1).
 *
 * Units: 1 / unit of age; age and life in the same unit.
 * Range: age >= 0, life > 0, shape > 0; infinite at age 0 when shape < 1.
 * Source: NIST/SEMATECH e-Handbook of Statistical Methods, 8.1.6.2.
 */
export function weibullHazard(age: number, life: number, shape: number): number {
  return (shape / life) * (age / life) ** (shape - 1);
}
