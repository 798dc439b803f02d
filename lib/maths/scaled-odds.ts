/**
 * A probability after its odds were multiplied by a factor.
 *
 * Range: probability in [0, 1], factor > 0.
 */
export function scaledOdds(probability: number, factor: number): number {
  return (probability * factor) / (1 - probability + probability * factor);
}
