/** A fresh seed for drawing and for results: any whole number from 0 to 2^32 - 1. */
export function newSeed(): number {
  return crypto.getRandomValues(new Uint32Array(1))[0] ?? 0;
}
