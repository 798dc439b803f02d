/**
 * A small generator of uniform numbers in 0..1 (1 excluded) from a seed; the same seed gives the same numbers.
 *
 * For simulation only, never for secrets.
 * Range: any seed; only its lowest 32 bits count. The period is 2^32.
 * Source: the mulberry32 mixing of a counter, from memory.
 */
export function seededUniform(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = state;
    mixed = Math.imul(mixed ^ (mixed >>> 15), mixed | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}
