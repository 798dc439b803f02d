/** Things that are equally frequent. */
export interface EquallyOften<T> {
  readonly p: number;
  readonly items: readonly T[];
}

/** Puts things of one chance together, the most frequent first; within one chance their order stays. */
export function byStrength<T>(items: readonly T[], chance: (item: T) => number): EquallyOften<T>[] {
  const groups = new Map<number, T[]>();
  for (const item of items) {
    const p = chance(item);
    groups.set(p, [...(groups.get(p) ?? []), item]);
  }
  return [...groups].map(([p, own]) => ({ p, items: own })).sort((a, b) => b.p - a.p);
}
