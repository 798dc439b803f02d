/** Sets of numbers that are joined two by two. */
export interface DisjointSets {
  /** The number that stands for the set of this one; alike for all of a set until the next join. */
  find(of: number): number;
  join(a: number, b: number): void;
}

/**
 * Numbers 0 to `count` - 1, each in a set of its own at first.
 *
 * Source: union-find with path halving, Tarjan and van Leeuwen 1984 (from memory).
 */
export function disjointSets(count: number): DisjointSets {
  const root = Int32Array.from({ length: count }, (_, k) => k);
  const find = (of: number): number => {
    let at = of;
    while (root[at] !== at) {
      root[at] = root[root[at] as number] as number;
      at = root[at] as number;
    }
    return at;
  };
  return {
    find,
    join: (a, b) => {
      root[find(b)] = find(a);
    },
  };
}
