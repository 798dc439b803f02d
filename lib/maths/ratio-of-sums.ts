/** A ratio of two sums, with its standard error. */
export interface SummedRatio {
  readonly ratio: number;
  /** 0 for a single cluster: nothing can be said then. */
  readonly error: number;
}

/**
 * Ratio of two sums over clusters, and its standard error when the clusters are independent of each other and what lies in
 * one of them is not.
 *
 * Shape: one sum above and one below for each cluster, of one length, at least one; those below sum to more than 0.
 * Errors: RangeError otherwise.
 * Source: the linearised variance of a ratio estimator, Cochran, Sampling Techniques, 1977, 6.4 (from memory).
 */
export function ratioOfSums(above: ArrayLike<number>, below: ArrayLike<number>): SummedRatio {
  const clusters = below.length;
  let over = 0;
  let under = 0;
  for (let at = 0; at < clusters; at++) {
    over += above[at] as number;
    under += below[at] as number;
  }
  if (above.length !== clusters || !(under > 0))
    throw new RangeError("ratioOfSums needs as many sums above as below, and those below above 0 in all");
  const ratio = over / under;
  let squares = 0;
  for (let at = 0; at < clusters; at++)
    squares += ((above[at] as number) - ratio * (below[at] as number)) ** 2;
  const error = clusters < 2 ? 0 : Math.sqrt((squares * clusters) / (clusters - 1)) / under;
  return { ratio, error };
}
