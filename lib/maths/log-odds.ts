/** Natural log-odds of a probability strictly between 0 and 1. */
export function logOdds(p: number): number {
  return Math.log(p) - Math.log1p(-p);
}

/** Probability of natural log-odds. */
export function logistic(logOdds: number): number {
  return 1 / (1 + Math.exp(-logOdds));
}
