/**
 * Shannon entropy of a distribution, in bits.
 *
 * Shape: weights need not sum to one; they are divided by their sum. No weight at all gives 0.
 * Units: bits.
 * Source: Shannon 1948, A Mathematical Theory of Communication.
 */
export function entropyBits(weights: ArrayLike<number>): number {
  let total = 0;
  let sum = 0;
  for (let index = 0; index < weights.length; index++) {
    const weight = weights[index] as number;
    if (weight > 0) {
      total += weight;
      sum += weight * Math.log2(weight);
    }
  }
  return total > 0 ? Math.max(0, Math.log2(total) - sum / total) : 0;
}
