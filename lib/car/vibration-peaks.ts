import { lombScargle, type Periodogram, withoutMean } from "../maths/lomb-scargle.ts";
import { highestFrequency, type Recording } from "./recording.ts";

/** A steady vibration that stands out of a recording. */
export interface VibrationPeak {
  readonly hz: number;
  /** Of the acceleration, all axes together. Units: m/s^2. */
  readonly amplitude: number;
  /** Chance that noise alone gives a peak as high anywhere in the recording. */
  readonly falseAlarm: number;
  /** How finely the frequency can be read: one turn in the length of the recording. */
  readonly resolutionHz: number;
}

/** A recording looked through. */
export interface VibrationSpectrum {
  /** Before any peak was taken out: for the plot. */
  readonly periodogram: Periodogram;
  /** Strongest first. */
  readonly peaks: readonly VibrationPeak[];
  /** Nothing above can be seen with this recording. Units: Hz. */
  readonly highestHz: number;
}

/** Below this the body sways on its springs, which is no vibration of a turning part. Units: Hz. */
const LOWEST_HZ = 3;
/** Peaks that noise would give more often than this are not named. */
const FALSE_ALARM = 1e-3;
const MOST_PEAKS = 8;
/** Lines that are taken out, those beside a stronger one included. */
const MOST_ROUNDS = 12;
/** Grid points for each turn in the length of the recording. */
const OVERSAMPLING = 4;
/** Half the width of what counts as the background of a peak. Units: Hz. */
const AROUND_HZ = 3;
/** Median of the gamma distribution of shape 3: the power of noise on three axes in units of its mean on one. */
const MEDIAN_OF_THREE = 2.674;

/**
 * The steady vibrations of a recording: the strongest peak is fitted, taken out, and the rest looked through again.
 *
 * The height of a peak is judged against the median power within 3 Hz, as a road's noise is not alike at all frequencies.
 * `apart`: a peak nearer than this share to a stronger one is a piece of the same line, which wavered, and is not named.
 * Source: Lomb-Scargle power of white noise is exponential (Scargle 1982); the sum over three axes follows the gamma
 * distribution of shape 3; taking peaks out one by one is "prewhitening" (Gray and Desikachary 1973, from memory).
 */
export function vibrationPeaks(recording: Recording, apart = 0): VibrationSpectrum {
  return peaksOf(recording, withoutPeaksTaken(recording), apart);
}

/**
 * The vibrations of whichever recording has the sharper spectrum: the one whose highest peak is higher.
 *
 * For one recording on several clocks, such as its own and that of its mean speed (`atMeanSpeed`): readings of the speed have
 * noise, and following them blurs what a car that ran evenly shows sharp. Returns the index of the one that was taken.
 */
export function sharpestPeaks(
  recordings: readonly [Recording, ...Recording[]],
  apart = 0,
): { readonly spectrum: VibrationSpectrum; readonly taken: number } {
  const tops = recordings.map((recording) => {
    const periodogram = withoutPeaksTaken(recording);
    return { periodogram, top: periodogram.power[highest(periodogram.power)] as number };
  });
  const taken = tops.reduce((best, { top }, i) => (top > (tops[best]?.top ?? 0) ? i : best), 0);
  const { periodogram } = tops[taken] as (typeof tops)[number];
  return { spectrum: peaksOf(recordings[taken] as Recording, periodogram, apart), taken };
}

function withoutPeaksTaken(recording: Recording): Periodogram {
  const { times, axes } = recording;
  const length = (times.at(-1) ?? 0) - (times[0] ?? 0);
  const stepHz = 1 / (OVERSAMPLING * length);
  const count = Math.max(1, Math.floor((highestFrequency(recording) - LOWEST_HZ) / stepHz));
  return lombScargle(times, axes, { fromHz: LOWEST_HZ, stepHz, count });
}

function peaksOf(recording: Recording, periodogram: Periodogram, apart: number): VibrationSpectrum {
  const { times } = recording;
  const { fromHz, stepHz } = periodogram;
  const count = periodogram.power.length;
  const grid = { fromHz, stepHz, count };
  let rest: readonly Float64Array[] = recording.axes.map(withoutMean);
  const independent = count / OVERSAMPLING;
  const peaks: VibrationPeak[] = [];
  for (let round = 0; round < MOST_ROUNDS && peaks.length < MOST_PEAKS; round++) {
    const now = round === 0 ? periodogram : lombScargle(times, rest, grid);
    const top = highest(now.power);
    const height = (MEDIAN_OF_THREE * (now.power[top] as number)) / medianAround(now, top);
    const falseAlarm = 1 - (1 - gammaTail(height)) ** independent;
    if (!(falseAlarm <= FALSE_ALARM)) break;
    const hz = refine(times, rest, LOWEST_HZ + top * stepHz, stepHz);
    const fits = rest.map((axis) => fitTone(times, axis, hz));
    if (!peaks.some((stronger) => Math.abs(stronger.hz - hz) < apart * stronger.hz)) {
      peaks.push({
        hz,
        amplitude: Math.hypot(...fits.map((f) => Math.hypot(f.cos, f.sin))),
        falseAlarm,
        resolutionHz: OVERSAMPLING * stepHz,
      });
    }
    rest = rest.map((axis, k) => {
      const { cos, sin } = fits[k] as Tone;
      return axis.map((v, i) => {
        const angle = 2 * Math.PI * hz * (times[i] as number);
        return v - cos * Math.cos(angle) - sin * Math.sin(angle);
      });
    });
  }
  return {
    periodogram,
    peaks: peaks.sort((a, b) => b.amplitude - a.amplitude),
    highestHz: highestFrequency(recording),
  };
}

/** Chance that the gamma distribution of shape 3 and scale 1 exceeds z. */
function gammaTail(z: number): number {
  return Math.exp(-z) * (1 + z + (z * z) / 2);
}

function highest(power: Float64Array): number {
  let top = 0;
  power.forEach((p, k) => {
    if (p > (power[top] as number)) top = k;
  });
  return top;
}

function medianAround({ power, stepHz }: Periodogram, at: number): number {
  const reach = Math.ceil(AROUND_HZ / stepHz);
  const near = power.slice(Math.max(0, at - reach), at + reach + 1).sort();
  return near[Math.floor(near.length / 2)] as number;
}

/** The frequency of greatest power within a grid step, by halving between three points. */
function refine(times: Float64Array, axes: readonly Float64Array[], near: number, within: number): number {
  const power = (hz: number): number =>
    lombScargle(times, axes, { fromHz: hz, stepHz: within, count: 1 }).power[0] as number;
  let low = near - within;
  let high = near + within;
  for (let round = 0; round < 16; round++) {
    const third = (high - low) / 3;
    if (power(low + third) < power(high - third)) low += third;
    else high -= third;
  }
  return (low + high) / 2;
}

interface Tone {
  readonly cos: number;
  readonly sin: number;
}

/** Least squares of one cosine and one sine. */
function fitTone(times: Float64Array, values: Float64Array, hz: number): Tone {
  let cc = 0;
  let cs = 0;
  let ss = 0;
  let yc = 0;
  let ys = 0;
  values.forEach((y, i) => {
    const angle = 2 * Math.PI * hz * (times[i] as number);
    const c = Math.cos(angle);
    const s = Math.sin(angle);
    cc += c * c;
    cs += c * s;
    ss += s * s;
    yc += y * c;
    ys += y * s;
  });
  const det = cc * ss - cs * cs;
  return det > 0 ? { cos: (yc * ss - ys * cs) / det, sin: (ys * cc - yc * cs) / det } : { cos: 0, sin: 0 };
}
