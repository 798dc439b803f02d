import { CornerwiseError } from "../errors.ts";
import type { Recording, SpeedFix } from "./recording.ts";

/** How steadily the car ran while it was recorded. */
export interface HeldSpeed {
  /** Distance by time. */
  readonly meanKmh: number;
  readonly leastKmh: number;
  readonly mostKmh: number;
  /** Fastest less slowest that still leaves one vibration a wheel turn in one line (`sharpSpread`), where that is known. */
  readonly sharpKmh: number | undefined;
  /**
   * steady: as even as a recording of this length can tell; followed: the readings are needed to bring each turn back
   * into one line (`atMeanSpeed`); uneven: too far from the mean for a rate to name what turns.
   */
  readonly held: "steady" | "followed" | "uneven";
}

/** Readings of the speed further apart leave open what the car did between them (common practice, no source). */
const LONGEST_WITHOUT_SPEED = 5;
const LEAST_FIXES = 3;
const KMH_PER_METRE_PER_SECOND = 3.6;

/**
 * Fastest less slowest, in km/h, up to which one vibration a wheel turn stays one line of the spectrum.
 *
 * A recording of T seconds tells frequencies 1/T apart. When the speed moves by dv, a vibration at n a turn moves by
 * n dv / C, with C the rolling circumference. For n = 1 that is less than 1/T as long as dv < C / T: the wheel makes
 * less than one turn more or fewer than at an even speed. Order n is spread over n lines at that limit.
 */
export function sharpSpread(circumferenceMm: number, seconds: number): number {
  return (circumferenceMm / 1000 / seconds) * KMH_PER_METRE_PER_SECOND;
}

/**
 * Whether the speed was held well enough; undefined when too few readings of it are there to say.
 *
 * `tolerance` is the share by which a frequency may be off its order (`knowledge.orders`): where the speed strays further
 * than that to either side of the middle, the frequency is off as far, and another part may be named. While the
 * circumference is not known nothing is called steady.
 * Errors: `bad-request` for a circumference or tolerance that is not above 0.
 */
export function heldSpeed(
  recording: Recording,
  tolerance: number,
  circumferenceMm?: number,
): HeldSpeed | undefined {
  if ((circumferenceMm !== undefined && !(circumferenceMm > 0)) || !(tolerance > 0)) {
    throw new CornerwiseError(
      "bad-request",
      `circumferenceMm is ${circumferenceMm}, tolerance ${tolerance}; both must be above 0.`,
      { field: "circumferenceMm" },
    );
  }
  const driven = drivenSpeeds(recording);
  if (driven === undefined) return undefined;
  const { start, end, fixes } = driven;
  const speeds = fixes.map(({ kmh }) => kmh);
  const leastKmh = Math.min(...speeds);
  const mostKmh = Math.max(...speeds);
  const meanKmh = (distances(fixes).at(-1) ?? 0) / (end - start);
  const sharpKmh = circumferenceMm === undefined ? undefined : sharpSpread(circumferenceMm, end - start);
  const spread = mostKmh - leastKmh;
  const uneven = spread / 2 > tolerance * meanKmh;
  const held = sharpKmh !== undefined && spread <= sharpKmh ? "steady" : uneven ? "uneven" : "followed";
  return { meanKmh, leastKmh, mostKmh, sharpKmh, held: meanKmh > 0 ? held : "uneven" };
}

/**
 * The recording as if the car had run at its mean speed: each sample stands at the time at which the same distance would
 * have been covered. What turns with the wheels is then one line however the speed wavered; what does not is blurred.
 *
 * The recording itself when its speeds are too few, or one of them is 0. Source: order tracking by resampling at equal
 * angles, as in any text on rotating machinery (from memory); Lomb-Scargle needs no equal steps, so nothing is resampled.
 */
export function atMeanSpeed(recording: Recording): Recording {
  const driven = drivenSpeeds(recording);
  if (driven === undefined || driven.fixes.some(({ kmh }) => kmh <= 0)) return recording;
  const { start, end, fixes } = driven;
  const covered = distances(fixes);
  const mean = (covered.at(-1) as number) / (end - start);
  let k = 0;
  const times = recording.times.map((time) => {
    while (k < fixes.length - 2 && (fixes[k + 1] as SpeedFix).time < time) k++;
    const from = fixes[k] as SpeedFix;
    const to = fixes[k + 1] as SpeedFix;
    const within = time - from.time;
    const gain = (to.kmh - from.kmh) / (to.time - from.time);
    return start + ((covered[k] as number) + from.kmh * within + (gain * within * within) / 2) / mean;
  });
  return { ...recording, times };
}

/** Readings of the speed that cover the whole recording: the first and last are held to its ends. */
function drivenSpeeds({ times, speeds }: Recording) {
  const start = times[0] ?? 0;
  const end = times.at(-1) ?? 0;
  const first = speeds[0];
  const last = speeds.at(-1);
  if (first === undefined || last === undefined || speeds.length < LEAST_FIXES) return undefined;
  const ends = [...speeds.map(({ time }) => time), end];
  const apart = ends.map((time, i) => time - (ends[i - 1] ?? start));
  if (Math.max(...apart) > LONGEST_WITHOUT_SPEED) return undefined;
  const fixes = [
    ...(first.time > start ? [{ time: start, kmh: first.kmh }] : []),
    ...speeds,
    ...(last.time < end ? [{ time: end, kmh: last.kmh }] : []),
  ];
  return { start, end, fixes };
}

/** Distance covered up to each reading, the speed between two of them changing evenly. Units: km/h times seconds. */
function distances(fixes: readonly SpeedFix[]): number[] {
  let sum = 0;
  return fixes.map(({ time, kmh }, i) => {
    const before = fixes[i - 1];
    if (before !== undefined) sum += ((before.kmh + kmh) / 2) * (time - before.time);
    return sum;
  });
}
