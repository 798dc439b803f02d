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
  const [only] = targets;
  const row = odds[0];
  if (targets.length === 1 && only !== undefined && row !== undefined) {
    // One target: every member has to have fired on it.
    const fired = only.ifPresent / (1 - only.leak);
    const silent = (only.ifPresent * only.leak) / (1 - only.leak) + only.ifAbsent;
    return (set) => {
      if (set.length === 0) return silent;
      let weight = fired;
      for (let m = 0; m < set.length; m++) weight *= row[set[m] as number] as number;
      return weight;
    };
  }
  let reached = new Float64Array(16);
  let next = new Float64Array(16);
  return (set) => {
    const states = 1 << set.length;
    reached.fill(0, 0, states);
    reached[0] = 1;
    targets.forEach(({ leak, ifAbsent, ifPresent }, k) => {
      const row = odds[k] as Float64Array;
      next.fill(0, 0, states);
      for (let firing = 0; firing < states; firing++) {
        let weight = firing === 0 ? (ifPresent * leak) / (1 - leak) + ifAbsent : ifPresent / (1 - leak);
        for (let m = 0; m < set.length; m++) {
          if (firing & (1 << m)) weight *= row[set[m] as number] as number;
        }
        if (weight === 0) continue;
        // Before the first target nobody has fired yet.
        for (let state = 0; state < (k === 0 ? 1 : states); state++) {
          next[state | firing] = (next[state | firing] as number) + weight * (reached[state] as number);
        }
      }
      [reached, next] = [next, reached];
    });
    return reached[states - 1] as number;
  };
}
