/**
 * One draw from the normal distribution of mean 0 and variance 1.
 *
 * Takes two numbers from `uniform` (0..1, 1 excluded).
 * Source: Box and Muller 1958.
 */
export function standardNormal(uniform: () => number): number {
  const radius = Math.sqrt(-2 * Math.log1p(-uniform()));
  return radius * Math.cos(2 * Math.PI * uniform());
}
