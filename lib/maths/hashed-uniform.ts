/**
 * A number in 0..1 (1 excluded) that a seed and a text fix: it looks random, and asking again gives it again.
 *
 * For simulated results that must not depend on the order in which they are asked for.
 * Source: FNV-1a over the UTF-16 units, then the 32-bit finaliser of MurmurHash3; both from memory.
 */
export function hashedUniform(seed: number, text: string): number {
  let hash = 0x811c9dc5 ^ (seed >>> 0);
  // The seed alone changes the start; mixing it keeps near seeds from giving near numbers.
  hash = finished(hash);
  for (let at = 0; at < text.length; at++) hash = Math.imul(hash ^ text.charCodeAt(at), 0x01000193);
  return (finished(hash) >>> 0) / 2 ** 32;
}

function finished(hash: number): number {
  let mixed = hash;
  mixed = Math.imul(mixed ^ (mixed >>> 16), 0x85ebca6b);
  mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
  return mixed ^ (mixed >>> 16);
}
