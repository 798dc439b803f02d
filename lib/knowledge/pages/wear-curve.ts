import { weibullConditionalFailure } from "../../maths/weibull-conditional-failure.ts";
import type { Life } from "../schema/parts.ts";

/** One point of a wear curve: the chance to have failed by `at`. */
export interface WearPoint {
  readonly at: number;
  readonly failed: number;
}

/** Chance that a part has failed by a distance or an age, when it was new at 0 and never renewed. */
export interface WearCurve {
  readonly unit: "km" | "years";
  /** Where the axis ends; the same for every part of one unit, so that curves can be held beside each other. */
  readonly until: number;
  readonly characteristic: number;
  readonly shape: number;
  readonly basis: string;
  /** Where half of them have failed. */
  readonly half: number;
  /** For the line. */
  readonly points: readonly WearPoint[];
  /** For the table. */
  readonly rows: readonly WearPoint[];
}

const AXIS = { km: { until: 300_000, step: 50_000 }, years: { until: 30, step: 5 } } as const;
const POINTS = 60;

/**
 * The wear curve of a fault's life; undefined for a plain share, which has none.
 *
 * Units: km or years, as the life has them.
 * Source: Weibull failure 1 - exp(-(t / life)^shape) and median life (ln 2)^(1 / shape), NIST/SEMATECH e-Handbook of
 * Statistical Methods, 8.1.6.2 and 1.3.6.6.8.
 */
export function wearCurve(life: Life): WearCurve | undefined {
  if ("share" in life) return undefined;
  const unit = "km" in life ? "km" : "years";
  const characteristic = "km" in life ? life.km : life.years;
  const { shape, basis } = life;
  const { until, step } = AXIS[unit];
  const at = (t: number): WearPoint => ({
    at: t,
    failed: weibullConditionalFailure(0, t, characteristic, shape),
  });
  return {
    unit,
    until,
    characteristic,
    shape,
    basis,
    half: characteristic * Math.LN2 ** (1 / shape),
    points: Array.from({ length: POINTS + 1 }, (_, i) => at((until * i) / POINTS)),
    rows: Array.from({ length: Math.floor(until / step) }, (_, i) => at(step * (i + 1))),
  };
}
