import { distance } from "fastest-levenshtein";
import type { Mend } from "./tokens.ts";

const SHORTEST = 5;
/** From this length on two slips are forgiven. */
const LONG = 8;

/**
 * A mender of slips: "cluncking" -> "clunking", "vibraiton" -> "vibration".
 *
 * Shape   vocabulary: bare words of the trade; ordinary: bare words that are never slips.
 * Range   words of five letters or more that begin with the same letter; one slip, two from eight letters on;
 *         two letters swapped count as one slip.
 */
export function typoMender(vocabulary: ReadonlySet<string>, ordinary: (bare: string) => boolean): Mend {
  const byInitial = new Map<string, string[]>();
  for (const word of [...vocabulary].sort()) {
    if (word.length < SHORTEST || !/^[a-z]+$/.test(word)) continue;
    const initial = word.charAt(0);
    byInitial.set(initial, [...(byInitial.get(initial) ?? []), word]);
  }
  return (bare) => {
    if (bare.length < SHORTEST || bare.length > 24 || !/^[a-z]+$/.test(bare)) return bare;
    if (vocabulary.has(bare) || ordinary(bare)) return bare;
    const swapped = swaps(bare).find((word) => vocabulary.has(word));
    if (swapped !== undefined) return swapped;
    let best = bare;
    let least = (bare.length >= LONG ? 2 : 1) + 1;
    for (const word of byInitial.get(bare.charAt(0)) ?? []) {
      if (Math.abs(word.length - bare.length) >= least) continue;
      const slips = distance(bare, word);
      if (slips < least) {
        best = word;
        least = slips;
      }
    }
    return best;
  };
}

/** The word with each two neighbouring letters swapped in turn. */
function swaps(word: string): string[] {
  return [...word.slice(1)].map(
    (letter, i) => `${word.slice(0, i)}${letter}${word.charAt(i)}${word.slice(i + 2)}`,
  );
}
