/** Power at each frequency of an even grid, summed over the axes of a recording. */
export interface Periodogram {
  /** Units: Hz. */
  readonly fromHz: number;
  readonly stepHz: number;
  /** A pure tone of amplitude A in N samples of one axis gives about N A^2 / 4. */
  readonly power: Float64Array;
}

/** Phasors are worked out afresh so often that the rounding of their repeated turning never shows. */
const REFRESH = 256;

/**
 * Lomb-Scargle periodogram of unevenly spaced samples.
 *
 * Shape: `times` in seconds, one value a time on each of the `axes`; means are taken off each axis.
 * Range: `stepHz` above 0, `count` 1 or more; times in any order, none of them equal in all.
 * Source: Scargle 1982, Studies in astronomical time series analysis II, equation 10; not normalised.
 */
export function lombScargle(
  times: Float64Array,
  axes: readonly Float64Array[],
  grid: { readonly fromHz: number; readonly stepHz: number; readonly count: number },
): Periodogram {
  const { fromHz, stepHz, count } = grid;
  const values = axes.map(withoutMean);
  const n = times.length;
  const still = new Float64Array(n);
  // Three axes in one pass, as a motion sensor has them: the samples are read from memory once, not three times.
  const threes = Array.from({ length: Math.ceil(values.length / 3) }, (_, j) =>
    [0, 1, 2].map((k) => values[3 * j + k] ?? still),
  );
  const power = new Float64Array(count);
  const cos = new Float64Array(n);
  const sin = new Float64Array(n);
  const turnCos = Float64Array.from(times, (t) => Math.cos(2 * Math.PI * stepHz * t));
  const turnSin = Float64Array.from(times, (t) => Math.sin(2 * Math.PI * stepHz * t));
  for (let k = 0; k < count; k++) {
    if (k % REFRESH === 0) {
      const w = 2 * Math.PI * (fromHz + k * stepHz);
      for (let i = 0; i < n; i++) {
        cos[i] = Math.cos(w * (times[i] as number));
        sin[i] = Math.sin(w * (times[i] as number));
      }
    }
    power[k] = threes.reduce((sum, three) => sum + powerAt(cos, sin, three), 0);
    for (let i = 0; i < n; i++) {
      const c = cos[i] as number;
      const s = sin[i] as number;
      cos[i] = c * (turnCos[i] as number) - s * (turnSin[i] as number);
      sin[i] = s * (turnCos[i] as number) + c * (turnSin[i] as number);
    }
  }
  return { fromHz, stepHz, power };
}

/** Scargle's power of three axes together, from the cosine and sine of the angle at each sample. */
function powerAt(cos: Float64Array, sin: Float64Array, three: readonly Float64Array[]): number {
  const [x, y, z] = three as [Float64Array, Float64Array, Float64Array];
  const n = x.length;
  let xc = 0;
  let xs = 0;
  let yc = 0;
  let ys = 0;
  let zc = 0;
  let zs = 0;
  let cc = 0;
  let cs = 0;
  for (let i = 0; i < n; i++) {
    const c = cos[i] as number;
    const s = sin[i] as number;
    xc += (x[i] as number) * c;
    xs += (x[i] as number) * s;
    yc += (y[i] as number) * c;
    ys += (y[i] as number) * s;
    zc += (z[i] as number) * c;
    zs += (z[i] as number) * s;
    cc += c * c;
    cs += c * s;
  }
  const ss = n - cc;
  // Turning by tau makes the cosine and the sine of the samples independent of each other.
  const tau = 0.5 * Math.atan2(2 * cs, cc - ss);
  const c = Math.cos(tau);
  const s = Math.sin(tau);
  const along = cc * c * c + 2 * cs * c * s + ss * s * s;
  const across = n - along;
  const inPhase = (xc * c + xs * s) ** 2 + (yc * c + ys * s) ** 2 + (zc * c + zs * s) ** 2;
  const outOfPhase = (xs * c - xc * s) ** 2 + (ys * c - yc * s) ** 2 + (zs * c - zc * s) ** 2;
  return ((along > 0 ? inPhase / along : 0) + (across > 0 ? outOfPhase / across : 0)) / 2;
}

/** The values less their mean. */
export function withoutMean(values: Float64Array): Float64Array {
  const mean = values.reduce((sum, v) => sum + v, 0) / (values.length || 1);
  return values.map((v) => v - mean);
}
