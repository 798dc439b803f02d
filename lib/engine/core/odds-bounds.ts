import type { Bit } from "./checked-evidence.ts";
import type { FoldedOdds } from "./folded-odds.ts";

/**
 * Bounds of P(suspect present | E) from its own links alone, linear in the number of links.
 *
 * A finding's factor with the suspect over that without it depends on who else is there, and lies between its values with
 * nobody else and with everybody else. So the odds of the suspect lie between its odds before the present findings times
 * the products of the smallest and of the largest ratios.
 *
 * Shape: aligned to the suspects; alike for one without present findings.
 */
export function oddsBounds(
  bits: readonly Bit[],
  { alpha, beta }: FoldedOdds,
): { low: Float64Array; high: Float64Array } {
  const logLeast = alpha.map((p, i) => Math.log(p) - Math.log(beta[i] as number));
  const logMost = logLeast.slice();
  for (const { leak, parents, w, ifAbsent, ifPresent } of bits) {
    let nobody = 1 - leak;
    let everybody = 1 - leak;
    parents.forEach((i, p) => {
      const silent = 1 - (w[p] as number);
      if ((beta[i] as number) === 0) nobody *= silent;
      if ((alpha[i] as number) > 0) everybody *= silent;
    });
    const factor = (u: number): number => ifAbsent * u + ifPresent * (1 - u);
    parents.forEach((i, p) => {
      if (alpha[i] === 0 || beta[i] === 0 || w[p] === 0) return;
      const silent = 1 - (w[p] as number);
      const first = Math.log(factor(nobody * silent) / factor(nobody));
      const last = Math.log(factor(everybody) / factor(everybody / silent));
      logLeast[i] = (logLeast[i] as number) + Math.min(first, last);
      logMost[i] = (logMost[i] as number) + Math.max(first, last);
    });
  }
  return { low: logLeast.map(chance), high: logMost.map(chance) };
}

function chance(logOdds: number): number {
  return 1 / (1 + Math.exp(-logOdds));
}
