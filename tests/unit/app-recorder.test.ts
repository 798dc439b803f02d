// @vitest-environment happy-dom
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { type Progress, record } from "../../app/sensor/recorder.ts";
import type { Sample } from "../../lib/car/recording-csv.ts";

/* What a browser's events and its place say (W3C Device Orientation and Motion, W3C Geolocation), to samples. */

type Told = (position: { coords: { speed: number | null } }) => void;
let tell: Told = () => undefined;
let refuse: (error: { code: number; PERMISSION_DENIED: number }) => void = () => undefined;
const cleared = vi.fn();

beforeEach(() => {
  vi.useFakeTimers();
  cleared.mockClear();
  Object.defineProperty(navigator, "geolocation", {
    configurable: true,
    value: {
      watchPosition: (told: Told, refused: typeof refuse) => {
        tell = told;
        refuse = refused;
        return 7;
      },
      clearWatch: cleared,
    },
  });
});
afterEach(() => vi.useRealTimers());

function move(
  seconds: number,
  detail: object = { accelerationIncludingGravity: { x: 1, y: 2, z: 9.8 } },
): void {
  const event = Object.assign(new Event("devicemotion"), detail);
  Object.defineProperty(event, "timeStamp", { value: 1000 * seconds });
  window.dispatchEvent(event);
}

function start(seconds: number, withSpeed = true) {
  const news: Progress[] = [];
  const ended: { samples: readonly Sample[]; trouble: string | undefined }[] = [];
  const stop = record({
    seconds,
    withSpeed,
    onProgress: (progress) => news.push(progress),
    onEnd: (samples, trouble) => ended.push({ samples: [...samples], trouble }),
  });
  return { news, ended, stop };
}

test("samples begin after the countdown, with each reading of the speed once, and end by themselves", () => {
  const { news, ended } = start(10);
  move(1);
  tell({ coords: { speed: 25 } });
  vi.advanceTimersByTime(5100);
  expect(news.at(-1)?.stage).toBe("recording");
  move(5);
  move(5.02);
  // The same time again is the same reading.
  move(5.02);
  tell({ coords: { speed: 30 } });
  move(5.04, {
    acceleration: { x: 3, y: 0, z: 0 },
    accelerationIncludingGravity: { x: null, y: null, z: null },
  });
  move(15.1);
  move(15.2);
  vi.advanceTimersByTime(300);
  expect(ended).toEqual([
    {
      trouble: undefined,
      samples: [
        [5, 1, 2, 9.8, 90],
        [5.02, 1, 2, 9.8],
        [5.04, 3, 0, 0, 108],
        [15.1, 1, 2, 9.8],
      ],
    },
  ]);
  expect(cleared).toHaveBeenCalledWith(7);
  move(16);
  expect(ended).toHaveLength(1);
});

test("a sensor that says nothing ends it, in words; so does a silence that lasts longer than the recording", () => {
  const dumb = start(10);
  move(1, { acceleration: { x: null, y: null, z: null }, accelerationIncludingGravity: null });
  vi.advanceTimersByTime(2500);
  expect(dumb.ended[0]?.trouble).toContain("says nothing");
  const silent = start(10);
  move(1);
  vi.advanceTimersByTime(18_000);
  expect(silent.ended).toEqual([{ trouble: undefined, samples: [] }]);
});

test("no speed is said and does not stop the recording", () => {
  const { news, ended, stop } = start(10);
  move(1);
  refuse({ code: 1, PERMISSION_DENIED: 1 });
  vi.advanceTimersByTime(300);
  expect(news.at(-1)?.speedTrouble).toContain("refused");
  tell({ coords: { speed: null } });
  vi.advanceTimersByTime(300);
  expect(news.at(-1)?.speedTrouble).toContain("no speed so far");
  tell({ coords: { speed: 10 } });
  vi.advanceTimersByTime(300);
  expect(news.at(-1)).toMatchObject({ speedTrouble: undefined, kmh: 36 });
  stop();
  expect(ended).toHaveLength(1);
});
