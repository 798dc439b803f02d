import { type BrierParts, brierOfBins } from "../../lib/maths/brier.ts";
import { ratioOfSums } from "../../lib/maths/ratio-of-sums.ts";
import { addedUp, type TenthSums } from "./forecasts.ts";
import { table } from "./timing.ts";

/** Of the forecasts of a tenth, how many came true, and how far that may be off. */
export interface ReliableTenth {
  readonly tenth: number;
  readonly count: number;
  /** Mean chance given. */
  readonly forecast: number;
  /** Share that came true. */
  readonly observed: number;
  /** Standard error of `observed`, over clusters: suspects of one car hang together. */
  readonly error: number;
}

/** Each tenth over all clusters; `clusters` holds the sums of one car each. */
export function reliableTenths(clusters: readonly (readonly TenthSums[])[]): ReliableTenth[] {
  return addedUp(clusters).map(({ tenth, count, forecast, observed }) => {
    const own = clusters.map((sums) => sums.find((s) => s.tenth === tenth));
    const { error } = ratioOfSums(
      own.map((s) => s?.observed ?? 0),
      own.map((s) => s?.count ?? 0),
    );
    return { tenth, count, forecast: forecast / count, observed: observed / count, error };
  });
}

/** Murphy's parts of all forecasts, by tenths. */
export function reliabilityParts(clusters: readonly (readonly TenthSums[])[]): BrierParts {
  return brierOfBins(addedUp(clusters));
}

/** The tenths as a table, and the score with its parts below. */
export function reliabilityTable(clusters: readonly (readonly TenthSums[])[]): string {
  const rows = reliableTenths(clusters).map(({ tenth, count, forecast, observed, error }) => [
    `${10 * tenth}-${10 * tenth + 10} %`,
    count,
    100 * forecast,
    100 * observed,
    100 * error,
  ]);
  const { score, reliability, resolution, uncertainty, within, skill } = reliabilityParts(clusters);
  return [
    table(["given", "suspects", "mean given %", "true %", "+-"], rows),
    `Brier ${score.toPrecision(4)} = reliability ${reliability.toPrecision(3)} - resolution ${resolution.toPrecision(3)} + uncertainty ${uncertainty.toPrecision(3)} + within bins ${within.toPrecision(2)}; skill ${skill.toFixed(3)}`,
    "",
  ].join("\n");
}
