import fc from "fast-check";
import { expect, test } from "vitest";
import { readRecording } from "../../lib/car/recording.ts";
import { vibrationPeaks } from "../../lib/car/vibration-peaks.ts";
import { seededUniform } from "../../lib/maths/seeded-uniform.ts";
import { standardNormal } from "../../lib/maths/standard-normal.ts";

/* Synthetic signals whose frequencies are known: sensor ticks that are uneven and now and then missing, gravity, noise. */

interface Tone {
  readonly hz: number;
  readonly amplitude: number;
}

function recorded(
  tones: readonly Tone[],
  noise: number,
  seed: number,
  { seconds = 20, rate = 60, jitter = 0.4 } = {},
): number[][] {
  const uniform = seededUniform(seed);
  const rows: number[][] = [];
  for (let k = 0; k < seconds * rate; k++) {
    if (uniform() < 0.02) continue;
    const t = (k + jitter * (uniform() - 0.5)) / rate;
    const along = (share: number, still: number): number =>
      tones.reduce(
        (sum, { hz, amplitude }) => sum + share * amplitude * Math.sin(2 * Math.PI * hz * t + hz),
        still,
      ) +
      noise * standardNormal(uniform);
    rows.push([t, along(0.6, 0.3), along(0.8, -0.5), along(0, 9.8)]);
  }
  return rows;
}

test("one vibration in as much noise is found within 0.3 Hz, with its amplitude", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 4, max: 28, noNaN: true }),
      fc.double({ min: 0.2, max: 2, noNaN: true }),
      fc.integer({ min: 0, max: 2 ** 31 }),
      (hz, amplitude, seed) => {
        const { peaks } = vibrationPeaks(readRecording(recorded([{ hz, amplitude }], amplitude, seed)));
        expect(Math.abs((peaks[0]?.hz ?? 0) - hz)).toBeLessThan(0.3);
        expect(Math.abs((peaks[0]?.amplitude ?? 0) - amplitude)).toBeLessThan(0.25 * amplitude);
      },
    ),
    { numRuns: 25, seed: 20261128 },
  );
});

test("two vibrations, one four times as strong, are both found", () => {
  const tones = [
    { hz: 12.4, amplitude: 0.8 },
    { hz: 24.8, amplitude: 0.2 },
  ];
  const { peaks } = vibrationPeaks(readRecording(recorded(tones, 0.2, 7)));
  expect(peaks.map((p) => Math.round(p.hz * 10) / 10)).toEqual([12.4, 24.8]);
});

test("noise alone gives a peak in fewer than one recording of a hundred", () => {
  const found = Array.from({ length: 100 }, (_, seed) =>
    vibrationPeaks(readRecording(recorded([], 0.5, seed, { seconds: 10 }))),
  ).filter(({ peaks }) => peaks.length > 0).length;
  expect(found).toBeLessThanOrEqual(1);
});

test("nothing above half the rate of the sensor is claimed", () => {
  expect(vibrationPeaks(readRecording(recorded([], 0.5, 1))).highestHz).toBeCloseTo(30, 0);
});

test.each([
  [[[0, 1, 2]], "Sample 1 needs four numbers"],
  [[[0, 1, 2, Number.NaN]], "Sample 1 needs four numbers"],
  [
    [
      [1, 0, 0, 0],
      [0.5, 0, 0, 0],
    ],
    "Sample 2 is earlier",
  ],
  [[[0, 0, 0, 0]], "at least 8 s and 64 samples"],
])("a recording that cannot be read says which sample and why", (rows, message) => {
  expect(() => readRecording(rows)).toThrow(message);
});

test.each([50, 60, 100, 200])(
  "at %i readings a second, each off its time, a vibration is found within 0.3 Hz",
  (rate) => {
    fc.assert(
      fc.property(
        fc.double({ min: 4, max: 24, noNaN: true }),
        fc.double({ min: 0, max: 0.9, noNaN: true }),
        fc.integer({ min: 0, max: 2 ** 31 }),
        (hz, jitter, seed) => {
          const rows = recorded([{ hz, amplitude: 0.5 }], 0.5, seed, { seconds: 10, rate, jitter });
          const { peaks, highestHz } = vibrationPeaks(readRecording(rows));
          expect(Math.abs((peaks[0]?.hz ?? 0) - hz)).toBeLessThan(0.3);
          expect(Math.abs(highestHz - rate / 2)).toBeLessThan(0.1 * rate);
        },
      ),
      { numRuns: 8, seed: 20261128 },
    );
  },
);
