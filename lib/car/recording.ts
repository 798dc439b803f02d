import { CornerwiseError } from "../errors.ts";

/** Road speed as it was at a time of a recording. */
export interface SpeedFix {
  /** Units: seconds, on the clock of the recording. */
  readonly time: number;
  readonly kmh: number;
}

/** What a motion sensor wrote down: acceleration along three axes at times of its own. */
export interface Recording {
  /** Units: seconds, rising. */
  readonly times: Float64Array;
  /** x, y, z. Units: m/s^2. */
  readonly axes: readonly [Float64Array, Float64Array, Float64Array];
  /** Rising in time; empty when no speed was written down. */
  readonly speeds: readonly SpeedFix[];
}

/** A frequency is told apart from its neighbours only after some turns of it. Units: seconds. */
export const SHORTEST_RECORDING = 8;
/** Longest stretch that is looked at: a speed is not held steadily for longer. Units: seconds. */
export const LONGEST_RECORDING = 60;
/** Most samples that are taken from a file. */
export const MOST_SAMPLES = 60_000;

/**
 * A recording from rows of time (seconds), three accelerations (m/s^2) and, where one was read, the road speed (km/h).
 *
 * Rows with the time of the row before are left out; a recording that is too long keeps its last minute.
 * Errors: `bad-request` when times do not rise, a number is missing, a speed is below 0, or less than 8 seconds or 64
 * samples are there.
 */
export function readRecording(rows: readonly (readonly number[])[]): Recording {
  if (rows.length > MOST_SAMPLES) {
    throw bad(
      `The recording has ${rows.length} samples; at most ${MOST_SAMPLES} are taken. Record a minute.`,
      0,
    );
  }
  const kept: (readonly number[])[] = [];
  rows.forEach((row, i) => {
    const [time] = row;
    if (row.length < 4 || time === undefined || !row.slice(0, 4).every(Number.isFinite)) {
      throw bad(
        `Sample ${i + 1} needs four numbers: seconds, and acceleration along x, y and z in m/s^2.`,
        i,
      );
    }
    const speed = row[4];
    if (speed !== undefined && !(Number.isFinite(speed) && speed >= 0)) {
      throw bad(`Sample ${i + 1} has the speed ${speed}; give km/h, 0 or more, or leave it out.`, i);
    }
    const last = kept.at(-1)?.[0];
    if (last !== undefined && time < last) {
      throw bad(`Sample ${i + 1} is earlier (${time} s) than the one before it (${last} s).`, i);
    }
    if (time !== last) kept.push(row);
  });
  const end = kept.at(-1)?.[0] ?? 0;
  const used = kept.filter(([t = 0]) => t >= end - LONGEST_RECORDING);
  const length = end - (used[0]?.[0] ?? end);
  if (used.length < 64 || length < SHORTEST_RECORDING) {
    throw bad(
      `The recording lasts ${length.toFixed(1)} s with ${used.length} samples; at least ${SHORTEST_RECORDING} s and 64 samples are needed.`,
      rows.length,
    );
  }
  const column = (k: number): Float64Array => Float64Array.from(used, (row) => row[k] as number);
  const speeds = used.flatMap(([time = 0, , , , kmh]) => (kmh === undefined ? [] : [{ time, kmh }]));
  return { times: column(0), axes: [column(1), column(2), column(3)], speeds };
}

/** Highest frequency that the samples can show: half their usual rate. Units: Hz. */
export function highestFrequency({ times }: Recording): number {
  return 0.5 / usualStep(times);
}

/** Stretches in which the sensor said nothing: its screen was off, or something else was in front. */
export interface Gaps {
  readonly count: number;
  /** All of them together. */
  readonly seconds: number;
}

/** A sensor that skips a reading or two is no gap: only more than five in a row, and a tenth of a second, is one. */
const GAP_STEPS = 5;
const GAP_SECONDS = 0.1;

/** Where readings are missing from a recording. */
export function recordingGaps({ times }: Recording): Gaps {
  const longest = Math.max(GAP_SECONDS, GAP_STEPS * usualStep(times));
  const gaps = stepsOf(times).filter((step) => step > longest);
  return { count: gaps.length, seconds: gaps.reduce((sum, gap) => sum + gap, 0) };
}

function stepsOf(times: Float64Array): Float64Array {
  return times.slice(1).map((t, i) => t - (times[i] as number));
}

function usualStep(times: Float64Array): number {
  const steps = stepsOf(times).sort();
  return steps[Math.floor(steps.length / 2)] as number;
}

function bad(message: string, row: number): CornerwiseError {
  return new CornerwiseError("bad-request", message, { row });
}
