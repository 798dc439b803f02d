/** A life that was watched: how long, and whether it ended in failure (else the watching ended first). */
export interface WatchedLife {
  readonly at: number;
  readonly failed: boolean;
}

/** A fitted Weibull life. */
export interface WeibullFit {
  readonly life: number;
  readonly shape: number;
  readonly logLikelihood: number;
}

/**
 * Maximum likelihood fit of a Weibull life to failures and right-censored lives.
 *
 * The likelihood's best life for a shape is known in closed form; what is left is one equation in the shape, which rises
 * with it and is solved by halving.
 *
 * Source: Cohen 1965, Technometrics 7, 579-588, from memory.
 */
export function fitWeibull(lives: readonly WatchedLife[]): WeibullFit {
  const failed = lives.filter((life) => life.failed);
  const meanLog = mean(failed.map(({ at }) => Math.log(at)));
  const score = (shape: number): number => {
    const powers = lives.map(({ at }) => at ** shape);
    const logs = lives.map(({ at }, i) => (powers[i] as number) * Math.log(at));
    return total(logs) / total(powers) - 1 / shape - meanLog;
  };
  let low = 1e-3;
  let high = 50;
  if (failed.length === 0 || score(low) > 0 || score(high) < 0) throw new RangeError("no fit to these lives");
  for (let step = 0; step < 200; step++) {
    const middle = (low + high) / 2;
    if (score(middle) > 0) high = middle;
    else low = middle;
  }
  const shape = (low + high) / 2;
  const life = (total(lives.map(({ at }) => at ** shape)) / failed.length) ** (1 / shape);
  return { life, shape, logLikelihood: weibullLogLikelihood(lives, life, shape) };
}

/** Log-likelihood of failures and right-censored lives. */
export function weibullLogLikelihood(lives: readonly WatchedLife[], life: number, shape: number): number {
  return total(
    lives.map(({ at, failed }) => {
      const survives = -((at / life) ** shape);
      return failed ? survives + Math.log(shape / life) + (shape - 1) * Math.log(at / life) : survives;
    }),
  );
}

/** Least-squares line of log life on the Weibull scale of median ranks, with Johnson's ranks for censored lives and Benard's medians. */
export function rankFitWeibull(lives: readonly WatchedLife[]): { life: number; shape: number } {
  const n = lives.length;
  // Where a failure and a censored life are as long, the failure counts first.
  const sorted = [...lives].sort((a, b) => a.at - b.at || Number(b.failed) - Number(a.failed));
  let rank = 0;
  const points: [number, number][] = [];
  sorted.forEach(({ at, failed }, i) => {
    if (!failed) return;
    rank += (n + 1 - rank) / (n - i + 1);
    points.push([Math.log(-Math.log(1 - (rank - 0.3) / (n + 0.4))), Math.log(at)]);
  });
  const x = mean(points.map(([p]) => p));
  const y = mean(points.map(([, p]) => p));
  const slope = total(points.map(([a, b]) => (a - x) * (b - y))) / total(points.map(([a]) => (a - x) ** 2));
  return { life: Math.exp(y - slope * x), shape: 1 / slope };
}

function total(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0);
}

function mean(values: readonly number[]): number {
  return total(values) / values.length;
}
