import type { Sample } from "../../lib/car/recording-csv.ts";
import { listenToMotion, type Motion } from "./motion-sensor.ts";
import { watchRoadSpeed } from "./road-speed.ts";
import { stayAwake } from "./stay-awake.ts";

/** Time to lay the phone down. Units: seconds. */
export const GETTING_READY = 5;
/** A sensor that is there speaks within this time. Units: seconds. */
const FIRST_WORD = 2;
const TICK = 0.2;
/** Levels that the line shows: the last ten seconds. */
const LEVELS = 50;

/** How a recording goes, told five times a second. */
export interface Progress {
  readonly stage: "ready-soon" | "recording";
  /** Until it begins, or until it ends. Units: seconds. */
  readonly left: number;
  /** How long it has recorded. Units: seconds. */
  readonly seconds: number;
  readonly count: number;
  /** Strength of the shaking, newest last. Units: m/s^2, root mean square about the mean of a fifth of a second. */
  readonly levels: readonly number[];
  readonly kmh: number | undefined;
  readonly speedTrouble: string | undefined;
}

export interface RecorderOptions {
  readonly seconds: number;
  readonly withSpeed: boolean;
  /** `samples` grows from one call to the next. */
  readonly onProgress: (progress: Progress, samples: readonly Sample[]) => void;
  /** By itself, by `stop`, or because the sensor says nothing, which `trouble` then puts into words. */
  readonly onEnd: (samples: readonly Sample[], trouble?: string) => void;
}

/** Records what the sensor says; the function that comes back ends it. Motion must have been allowed before. */
export function record({ seconds, withSpeed, onProgress, onEnd }: RecorderOptions): () => void {
  const begun = performance.now() / 1000;
  const samples: Sample[] = [];
  const levels: number[] = [];
  let fresh: Motion[] = [];
  let heard = false;
  let since: number | undefined;
  let kmh: number | undefined;
  let unwritten: number | undefined;
  let speedTrouble: string | undefined;

  const lasted = (): number => (samples.at(-1)?.[0] ?? 0) - (samples[0]?.[0] ?? 0);
  const hush = listenToMotion((motion) => {
    heard = true;
    fresh.push(motion);
    if (since === undefined || lasted() >= seconds) return;
    samples.push(unwritten === undefined ? motion : [...motion, unwritten]);
    unwritten = undefined;
  });
  const unwatch = withSpeed
    ? watchRoadSpeed(
        (now) => {
          kmh = now;
          unwritten = now;
        },
        (words) => {
          speedTrouble = words;
        },
      )
    : () => undefined;
  const sleepAgain = stayAwake();

  const end = (trouble?: string): void => {
    clearInterval(ticking);
    hush();
    unwatch();
    sleepAgain();
    onEnd(samples, trouble);
  };
  const tick = (): void => {
    const now = performance.now() / 1000;
    if (!heard && now - begun > FIRST_WORD) {
      end(
        "The motion sensor says nothing: this device has none, or it is switched off for this browser. Use a phone, or take in a recording from a file.",
      );
      return;
    }
    if (since === undefined && now - begun >= GETTING_READY) {
      since = now;
      // The speed of before the start is still the speed.
      unwritten = kmh;
    }
    if (fresh.length > 0) levels.push(levelOf(fresh));
    if (levels.length > LEVELS) levels.shift();
    fresh = [];
    const left = since === undefined ? begun + GETTING_READY - now : seconds - lasted();
    onProgress(
      {
        stage: since === undefined ? "ready-soon" : "recording",
        left: Math.max(0, left),
        seconds: lasted(),
        count: samples.length,
        levels: [...levels],
        kmh,
        speedTrouble,
      },
      samples,
    );
    // By the clock too: a sensor that falls silent must not keep the recording open.
    if (since !== undefined && (lasted() >= seconds || now - since > seconds + 2)) end();
  };
  const ticking = setInterval(tick, TICK * 1000);
  return () => end();
}

/** Root mean square of the distance from the mean. */
function levelOf(motions: readonly Motion[]): number {
  const squares = [1, 2, 3].map((k) => {
    const axis = motions.map((motion) => motion[k] as number);
    const mean = axis.reduce((sum, v) => sum + v, 0) / axis.length;
    return axis.reduce((sum, v) => sum + (v - mean) ** 2, 0) / axis.length;
  });
  return Math.sqrt(squares.reduce((sum, v) => sum + v, 0));
}
