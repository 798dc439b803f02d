import type { Knowledge } from "../schema/compiled.ts";
import { logOdds } from "../../maths/log-odds.ts";

/**
 * The frequency word that stands nearest to a chance: "very often" for 0.83.
 *
 * Range: p strictly between 0 and 1. Nearness is by log-odds, as a bare number in a record takes its spread.
 */
export function strengthWords({ scale }: Pick<Knowledge, "scale">, p: number): string {
  let best = "";
  let distance = Number.POSITIVE_INFINITY;
  for (const [word, { p: stands }] of Object.entries(scale.words)) {
    const away = Math.abs(logOdds(stands) - logOdds(p));
    if (away < distance) {
      best = word;
      distance = away;
    }
  }
  return best.replaceAll("-", " ");
}
