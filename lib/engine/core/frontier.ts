/*
 * The linear steps of the frontier programme on tables over the open findings, and their transposes.
 * Every term is positive, so nothing cancels. A table's index has one bit for each open finding: 1 = explained.
 */

/** Opens a finding as the highest bit: unexplained with weight u, explained by leak or absorbed suspects with e. */
export function openForward(table: Float64Array, u: number, e: number): Float64Array {
  const size = table.length;
  const next = new Float64Array(2 * size);
  for (let s = 0; s < size; s++) {
    const a = table[s] as number;
    next[s] = u * a;
    next[size + s] = e * a;
  }
  return next;
}

/** Transpose of openForward. */
export function openBackward(back: Float64Array, u: number, e: number): Float64Array {
  const size = back.length / 2;
  const next = new Float64Array(size);
  for (let s = 0; s < size; s++) next[s] = u * (back[s] as number) + e * (back[size + s] as number);
  return next;
}

/** Sums a suspect out: beta * table + alpha * (table after its links had their chance). */
export function faultForward(
  table: Float64Array,
  positions: Int32Array,
  w: Float64Array,
  alpha: number,
  beta: number,
): Float64Array {
  const next = table.slice();
  for (let b = 0; b < positions.length; b++) {
    const stride = 1 << (positions[b] as number);
    const fires = w[b] as number;
    const silent = 1 - fires;
    for (let base = 0; base < next.length; base += 2 * stride) {
      for (let s = base; s < base + stride; s++) {
        const low = next[s] as number;
        next[s] = silent * low;
        next[s + stride] = (next[s + stride] as number) + fires * low;
      }
    }
  }
  for (let s = 0; s < next.length; s++) next[s] = beta * (table[s] as number) + alpha * (next[s] as number);
  return next;
}

/** alpha times the transpose of a present suspect's links. */
export function faultBackward(
  back: Float64Array,
  positions: Int32Array,
  w: Float64Array,
  alpha: number,
): Float64Array {
  const next = back.slice();
  for (let b = 0; b < positions.length; b++) {
    const stride = 1 << (positions[b] as number);
    const fires = w[b] as number;
    const silent = 1 - fires;
    for (let base = 0; base < next.length; base += 2 * stride) {
      for (let s = base; s < base + stride; s++) {
        next[s] = silent * (next[s] as number) + fires * (next[s + stride] as number);
      }
    }
  }
  for (let s = 0; s < next.length; s++) next[s] = alpha * (next[s] as number);
  return next;
}

/** Closes a finding: reads it out with the weight of its answer when absent and when present. */
export function closeForward(
  table: Float64Array,
  position: number,
  ifAbsent: number,
  ifPresent: number,
): Float64Array {
  const size = table.length / 2;
  const next = new Float64Array(size);
  const stride = 1 << position;
  const below = stride - 1;
  for (let s = 0; s < size; s++) {
    const low = ((s & ~below) << 1) | (s & below);
    next[s] = ifAbsent * (table[low] as number) + ifPresent * (table[low + stride] as number);
  }
  return next;
}

/** Transpose of closeForward. */
export function closeBackward(
  back: Float64Array,
  position: number,
  ifAbsent: number,
  ifPresent: number,
): Float64Array {
  const next = new Float64Array(2 * back.length);
  const stride = 1 << position;
  const below = stride - 1;
  for (let s = 0; s < back.length; s++) {
    const low = ((s & ~below) << 1) | (s & below);
    next[low] = ifAbsent * (back[s] as number);
    next[low + stride] = ifPresent * (back[s] as number);
  }
  return next;
}

/** Sum of products of two tables of the same size, the first read from an offset on. */
export function dot(a: Float64Array, b: Float64Array, offset = 0): number {
  let sum = 0;
  for (let s = 0; s < b.length; s++) sum += (a[offset + s] as number) * (b[s] as number);
  return sum;
}
