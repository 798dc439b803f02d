/** Mean; 0 of nothing. */
export function mean(values: readonly number[]): number {
  return values.length === 0 ? 0 : values.reduce((sum, v) => sum + v, 0) / values.length;
}

/** Standard error of the mean. */
export function standardError(values: readonly number[]): number {
  const middle = mean(values);
  const variance = values.reduce((sum, v) => sum + (v - middle) ** 2, 0) / Math.max(1, values.length - 1);
  return Math.sqrt(variance / Math.max(1, values.length));
}

/** Things by a key, in the order in which the keys come. */
export function grouped<T>(things: readonly T[], key: (thing: T) => string): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const thing of things) {
    const own = groups.get(key(thing));
    if (own === undefined) groups.set(key(thing), [thing]);
    else own.push(thing);
  }
  return groups;
}
