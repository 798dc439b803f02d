import { table } from "./timing.ts";

/** One way of searching: minutes and wrong verdicts of its cases, slice by slice; undefined where it was not played. */
export interface SlicedWay {
  readonly stop: string;
  readonly policy: string;
  readonly slices: readonly ({ readonly minutes: readonly number[]; readonly wrong: number } | undefined)[];
}

/** Mean minutes, and share of verdicts that are wrong. */
export interface Trade {
  readonly minutes: number;
  readonly errors: number;
}

/** What another policy takes to make as few errors. */
export interface SameErrors {
  readonly minutes: number;
  /** False when it makes more errors however long it searches: `minutes` is then what its best takes. */
  readonly reached: boolean;
}

/**
 * Minutes that a policy takes at a share of errors, from its own trade of minutes against errors: in a straight line
 * between the two rules beside it.
 *
 * Shape: at least one point, in any order. Fewer minutes than at the most errors are never given.
 */
export function minutesAt(errors: number, curve: readonly Trade[]): SameErrors {
  const byMinutes = curve.toSorted((a, b) => a.minutes - b.minutes);
  let before: Trade | undefined;
  for (const point of byMinutes) {
    if (point.errors <= errors) {
      if (before === undefined) return { minutes: point.minutes, reached: true };
      const along = (before.errors - errors) / (before.errors - point.errors);
      return { minutes: before.minutes + along * (point.minutes - before.minutes), reached: true };
    }
    before = point;
  }
  return { minutes: byMinutes.at(-1)?.minutes ?? 0, reached: false };
}

/** Blocks of slices that are left out in turn for the standard error. */
const BLOCKS = 40;

/** Each way's minutes as a share of what another policy takes at the same share of errors. */
export function sameErrorsTable(owns: readonly SlicedWay[], others: readonly SlicedWay[]): string {
  const rows = owns.map((own) => {
    const all = shareOf(own, others, () => true);
    const slices = own.slices.length;
    const left = Array.from({ length: Math.min(BLOCKS, slices) }, (_, block) =>
      shareOf(own, others, (at) => at % BLOCKS !== block),
    ).filter((share) => Number.isFinite(share.share));
    const middle = left.reduce((sum, s) => sum + s.share, 0) / left.length;
    const squares = left.reduce((sum, s) => sum + (s.share - middle) ** 2, 0);
    return [
      `${own.stop}: ${own.policy}`,
      all.own.minutes,
      100 * all.own.errors,
      `${all.reached ? "" : "over "}${all.minutes.toPrecision(3)}`,
      `${all.reached ? "" : "under "}${(100 * all.share).toPrecision(3)}`,
      // Quenouille's and Tukey's jackknife.
      100 * Math.sqrt((squares * (left.length - 1)) / left.length),
    ];
  });
  return table(["shipped, stop: policy", "minutes", "error %", "other's minutes", "share %", "+-"], rows);
}

function shareOf(
  own: SlicedWay,
  others: readonly SlicedWay[],
  counts: (slice: number) => boolean,
): SameErrors & { own: Trade; share: number } {
  const trade = tradeOf(own, counts);
  const curve = others.map((other) => tradeOf(other, counts)).filter((t) => Number.isFinite(t.errors));
  const at = minutesAt(trade.errors, curve);
  return { ...at, own: trade, share: trade.minutes / at.minutes };
}

function tradeOf({ slices }: SlicedWay, counts: (slice: number) => boolean): Trade {
  let cases = 0;
  let minutes = 0;
  let wrong = 0;
  slices.forEach((slice, at) => {
    if (slice === undefined || !counts(at)) return;
    cases += slice.minutes.length;
    minutes += slice.minutes.reduce((a, b) => a + b, 0);
    wrong += slice.wrong;
  });
  return { minutes: minutes / cases, errors: wrong / cases };
}
