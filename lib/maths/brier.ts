/** A group of forecasts that are taken together. */
export interface ForecastBin {
  readonly count: number;
  /** Mean of the forecasts in it. */
  readonly forecast: number;
  /** Share of them that came true. */
  readonly observed: number;
}

/** What the parts need of the forecasts of one bin; those of several sets of forecasts may be added up. */
export interface BinSums {
  readonly count: number;
  /** Sum of the forecasts. */
  readonly forecast: number;
  /** How many of them came true. */
  readonly observed: number;
  /** Sum of the squared distances of forecast and outcome. */
  readonly squares: number;
}

/**
 * Murphy's parts of a Brier score: score = reliability - resolution + uncertainty + within.
 *
 * `within` is 0 when all forecasts of a bin are equal.
 */
export interface BrierParts {
  readonly score: number;
  /** Mean squared distance of what came true from what was forecast; 0 is best. */
  readonly reliability: number;
  /** Mean squared distance of what came true in each bin from the base rate; more is better. */
  readonly resolution: number;
  /** Score of always forecasting the base rate. */
  readonly uncertainty: number;
  readonly within: number;
  /** 1 - score / uncertainty; 0 when every outcome was the same. */
  readonly skill: number;
  readonly bins: readonly ForecastBin[];
}

/**
 * Brier score with its decomposition over bins.
 *
 * Shape: forecasts and outcomes (0 or 1) of one length, at least one. `binOf` names the bin of a forecast; left out, equal
 * forecasts share one. Bins come in the order of their mean forecast.
 * Errors: RangeError for no forecast, or lengths that differ.
 * Source: Brier 1950; Murphy 1973; the part within bins after Stephenson, Coelho and Jolliffe 2008.
 */
export function brierParts(
  forecasts: ArrayLike<number>,
  outcomes: ArrayLike<number>,
  binOf: (forecast: number) => number = (forecast) => forecast,
): BrierParts {
  const n = forecasts.length;
  if (n === 0 || outcomes.length !== n)
    throw new RangeError("brierParts needs as many outcomes as forecasts, and one at least");
  const sums = new Map<number, { count: number; forecast: number; observed: number; squares: number }>();
  for (let at = 0; at < n; at++) {
    const forecast = forecasts[at] as number;
    const outcome = outcomes[at] as number;
    const bin = sums.get(binOf(forecast)) ?? { count: 0, forecast: 0, observed: 0, squares: 0 };
    sums.set(binOf(forecast), bin);
    bin.count += 1;
    bin.forecast += forecast;
    bin.observed += outcome;
    bin.squares += (forecast - outcome) ** 2;
  }
  return brierOfBins([...sums.values()]);
}

/**
 * As `brierParts`, from the sums of each bin.
 *
 * Shape: at least one bin, none of them empty; they come back in the order of their mean forecast.
 * Errors: RangeError for no bin, or an empty one.
 */
export function brierOfBins(sums: readonly BinSums[]): BrierParts {
  if (sums.length === 0 || sums.some((bin) => !(bin.count > 0)))
    throw new RangeError("brierOfBins needs at least one bin, and forecasts in each");
  const total = (of: (bin: BinSums) => number): number => sums.reduce((sum, bin) => sum + of(bin), 0);
  const n = total((bin) => bin.count);
  const bins = sums
    .map(({ count, forecast, observed }) => ({
      count,
      forecast: forecast / count,
      observed: observed / count,
    }))
    .sort((a, b) => a.forecast - b.forecast);
  const base = total((bin) => bin.observed) / n;
  const weighted = (of: (bin: ForecastBin) => number): number =>
    bins.reduce((sum, bin) => sum + bin.count * of(bin), 0) / n;
  const score = total((bin) => bin.squares) / n;
  const reliability = weighted((bin) => (bin.forecast - bin.observed) ** 2);
  const resolution = weighted((bin) => (bin.observed - base) ** 2);
  const uncertainty = base * (1 - base);
  return {
    score,
    reliability,
    resolution,
    uncertainty,
    within: score - reliability + resolution - uncertainty,
    skill: uncertainty > 0 ? 1 - score / uncertainty : 0,
    bins,
  };
}

/**
 * Brier's own two-sided score of one forecast over several classes.
 *
 * Range: 0 (certain and right) to 2 (certain and wrong).
 * Source: Brier 1950.
 */
export function brierOfClasses(forecast: ArrayLike<number>, cameTrue: number): number {
  let sum = 0;
  for (let k = 0; k < forecast.length; k++) sum += ((forecast[k] as number) - (k === cameTrue ? 1 : 0)) ** 2;
  return sum;
}

/**
 * Mean logarithmic loss of forecasts of yes or no.
 *
 * Units: natural log; a certain forecast that fails gives Infinity.
 * Source: Good 1952, from memory.
 */
export function logLoss(forecasts: ArrayLike<number>, outcomes: ArrayLike<number>): number {
  let sum = 0;
  for (let at = 0; at < forecasts.length; at++) {
    const forecast = forecasts[at] as number;
    sum -= outcomes[at] === 1 ? Math.log(forecast) : Math.log1p(-forecast);
  }
  return sum / forecasts.length;
}
