import type { Bit } from "./checked-evidence.ts";
import type { FoldedOdds } from "./folded-odds.ts";

/** Sets times findings at most: some 50 ms. */
const MOST_WORK = 6e6;

/**
 * Exact marginals of a part of the network by going through every set of its suspects, for parts that have few suspects and
 * so many findings that no plan over the findings is cheap.
 *
 * Shape: indexed as the odds are, those of other suspects as before; `suspects` are parents of the findings `active` only.
 * Undefined when there are too many sets, or all weights underflow. Every term is positive, so nothing cancels.
 */
export function enumeratedPart(
  bits: readonly Bit[],
  active: readonly number[],
  suspects: readonly number[],
  odds: FoldedOdds,
): Float64Array | undefined {
  const n = suspects.length;
  const m = active.length;
  if (2 ** n * m > MOST_WORK) return undefined;
  const { links, start, ceiling } = setUp(bits, active, suspects);
  // Row d: what is unexplained of each finding after the first d suspects were decided.
  const silent = new Float64Array((n + 1) * m);
  silent.set(start);
  const present = new Float64Array(n);
  const sumFrom = (depth: number, weight: number): number => {
    if (weight === 0) return 0;
    const row = depth * m;
    if (depth === n) {
      let product = weight;
      for (let k = 0; k < m; k++) {
        const { ifAbsent, ifPresent } = bits[active[k] as number] as Bit;
        const unexplained = silent[row + k] as number;
        product *= (ifAbsent * unexplained + ifPresent * (1 - unexplained)) / (ceiling[k] as number);
      }
      return product;
    }
    const i = suspects[depth] as number;
    silent.copyWithin(row + m, row, row + m);
    const absent = sumFrom(depth + 1, weight * (odds.beta[i] as number));
    const { at, q } = links[depth] as Links;
    silent.copyWithin(row + m, row, row + m);
    for (let p = 0; p < at.length; p++) {
      const cell = row + m + (at[p] as number);
      silent[cell] = (silent[cell] as number) * (q[p] as number);
    }
    const there = sumFrom(depth + 1, weight * (odds.alpha[i] as number));
    present[depth] = (present[depth] as number) + there;
    return absent + there;
  };
  const total = sumFrom(0, 1);
  if (!(total > 0)) return undefined;
  const marginals = odds.alpha.slice();
  suspects.forEach((i, place) => {
    marginals[i] = Math.min(1, (present[place] as number) / total);
  });
  return marginals;
}

/** The findings that a suspect shows, by their place in the list, and the chance that it leaves each alone. */
interface Links {
  readonly at: number[];
  readonly q: number[];
}

function setUp(
  bits: readonly Bit[],
  active: readonly number[],
  suspects: readonly number[],
): { links: Links[]; start: Float64Array; ceiling: Float64Array } {
  const placeOf = new Map(suspects.map((i, place) => [i, place]));
  const links = suspects.map((): Links => ({ at: [], q: [] }));
  const start = new Float64Array(active.length);
  // The largest value that a finding's factor can have: two hundred small factors would underflow by themselves.
  const ceiling = new Float64Array(active.length);
  active.forEach((bit, k) => {
    const { leak, parents, w, ifAbsent, ifPresent } = bits[bit] as Bit;
    let least = 1 - leak;
    parents.forEach((i, p) => {
      const own = links[placeOf.get(i) ?? -1];
      if (own === undefined) return;
      const silent = 1 - (w[p] as number);
      own.at.push(k);
      own.q.push(silent);
      least *= silent;
    });
    start[k] = 1 - leak;
    const factor = (u: number): number => ifAbsent * u + ifPresent * (1 - u);
    ceiling[k] = Math.max(factor(1 - leak), factor(least)) || 1;
  });
  return { links, start, ceiling };
}
