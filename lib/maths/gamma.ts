const LANCZOS_G = 7;
const LANCZOS = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
  12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
];

/**
 * The gamma function for positive arguments.
 *
 * Range: x > 0; relative error about 1e-14 up to x = 20.
 * Source: Lanczos 1964; the nine coefficients for g = 7 are Godfrey's, from memory.
 */
export function gamma(x: number): number {
  if (x < 0.5) return Math.PI / (Math.sin(Math.PI * x) * gamma(1 - x));
  const y = x - 1;
  let sum = LANCZOS[0] as number;
  for (let index = 1; index < LANCZOS.length; index++) sum += (LANCZOS[index] as number) / (y + index);
  const t = y + LANCZOS_G + 0.5;
  // The power is split in two so that it does not overflow before the exponential brings it down.
  const half = t ** ((y + 0.5) / 2);
  return Math.sqrt(2 * Math.PI) * half * Math.exp(-t) * half * sum;
}
