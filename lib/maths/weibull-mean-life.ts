import { gamma } from "./gamma.ts";

/**
 * Mean of a Weibull life, life * gamma(1 + 1 / shape).
 *
 * Units: the unit of life.
 * Range: life > 0, shape > 0.
 * Source: NIST/SEMATECH e-Handbook of Statistical Methods, 8.1.6.2.
 */
export function weibullMeanLife(life: number, shape: number): number {
  return life * gamma(1 + 1 / shape);
}
