import type { Bit } from "./checked-evidence.ts";

/** How a set of suspects can have shown the targets. */
export interface Cover {
  /** Chance, relative to all of them silent, that exactly these suspects fired on the targets as they were answered. */
  (set: readonly number[]): number;
}

/**
 * Prepares the cover weights of the targets.
 *
 * A small programme over which members have fired so far; every term is positive. Divided by
 * product over targets of (1 - leak) * product over members of (1 - w), the weight of silence.
 * Range: sets of up to four suspects.
 */
export function coverOf(targets: readonly Bit[], suspects: number): Cover {
  const odds = targets.map(({ parents, w }) => {
    const row = new Float64Array(suspects);
    parents.forEach((fault, p) => {
      row[fault] = (w[p] as number) / (1 - (w[p] as number));
    });
    return row;
  });
  return (set) => {
    const states = 1 << set.length;
    let reached = new Float64Array(states);
    reached[0] = 1;
    targets.forEach(({ leak, ifAbsent, ifPresent }, k) => {
      const row = odds[k] as Float64Array;
      const next = new Float64Array(states);
      for (let firing = 0; firing < states; firing++) {
        let weight = firing === 0 ? (ifPresent * leak) / (1 - leak) + ifAbsent : ifPresent / (1 - leak);
        for (let m = 0; m < set.length; m++) {
          if (firing & (1 << m)) weight *= row[set[m] as number] as number;
        }
        if (weight === 0) continue;
        for (let state = 0; state < states; state++) {
          next[state | firing] = (next[state | firing] as number) + weight * (reached[state] as number);
        }
      }
      reached = next;
    });
    return reached[states - 1] as number;
  };
}
