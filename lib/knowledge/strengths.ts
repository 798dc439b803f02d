import type { Strength } from "./schema/common.ts";
import type { Weight } from "./schema/compiled.ts";
import { logOdds } from "../maths/log-odds.ts";

/** The frequency words by name. */
export type ScaleWords = Readonly<Record<string, { readonly p: number; readonly spread: number }>>;

/** The frequency word that a strength names, or undefined when it is a number. */
export function wordOf(strength: Strength): string | undefined {
  const value = typeof strength === "object" ? strength.s : strength;
  return typeof value === "string" ? value : undefined;
}

/**
 * A strength as a number with its spread and basis.
 *
 * A word brings its own spread; a bare number takes that of the word nearest to it in log-odds. The strength's own spread and
 * basis go before both.
 * Units   p: probability; spread: standard deviation in log-odds.
 * Errors  undefined for a word that the scale does not hold.
 */
export function weightOf(strength: Strength, words: ScaleWords, basis: string): Weight | undefined {
  const own = typeof strength === "object" ? strength : { s: strength };
  const word = wordOf(strength);
  const numeric = word === undefined ? nearestWord(Number(own.s), words) : undefined;
  const entry = word !== undefined && Object.hasOwn(words, word) ? words[word] : numeric;
  if (entry === undefined) return undefined;
  return { p: entry.p, spread: own.spread ?? entry.spread, basis: own.basis ?? basis };
}

function nearestWord(p: number, words: ScaleWords): { p: number; spread: number } | undefined {
  let best: { p: number; spread: number } | undefined;
  let distance = Number.POSITIVE_INFINITY;
  for (const word of Object.values(words)) {
    const away = Math.abs(logOdds(word.p) - logOdds(p));
    if (away < distance) {
      distance = away;
      best = { p, spread: word.spread };
    }
  }
  return best;
}
