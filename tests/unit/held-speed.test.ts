import { describe, expect, test } from "vitest";
import { foldedHz, foldedOrders } from "../../lib/car/folded-orders.ts";
import { atMeanSpeed, heldSpeed, sharpSpread } from "../../lib/car/held-speed.ts";
import { readRecording, recordingGaps } from "../../lib/car/recording.ts";
import { sharpestPeaks, vibrationPeaks } from "../../lib/car/vibration-peaks.ts";
import { seededUniform } from "../../lib/maths/seeded-uniform.ts";
import { standardNormal } from "../../lib/maths/standard-normal.ts";

const CIRCUMFERENCE = 1930;
const TOLERANCE = 0.04;

/** A wheel that shakes once a turn while the speed changes evenly; the speed is read once a second. */
function drive(fromKmh: number, toKmh: number, { seconds = 20, rate = 60, speeds = true } = {}) {
  const uniform = seededUniform(5);
  const rows = Array.from({ length: seconds * rate }, (_, k) => {
    const t = (k + 0.3 * (uniform() - 0.5)) / rate;
    const gain = (toKmh - fromKmh) / seconds;
    const metres = (fromKmh * t + (gain * t * t) / 2) / 3.6;
    const shake = 0.5 * Math.sin((2 * Math.PI * metres) / (CIRCUMFERENCE / 1000));
    const noise = () => 0.3 * standardNormal(uniform);
    const row = [t, shake + noise(), noise(), 9.8 + noise()];
    return speeds && k % rate === 0 ? [...row, fromKmh + gain * t] : row;
  });
  return readRecording(rows);
}

describe("a speed that was read while recording", () => {
  test("one wheel turn more or fewer in the whole recording is the limit of a sharp line", () => {
    // 1.93 m in 20 s is 0.0965 m/s.
    expect(sharpSpread(CIRCUMFERENCE, 20)).toBeCloseTo(0.0965 * 3.6, 6);
    expect(heldSpeed(drive(100, 100.2), TOLERANCE, CIRCUMFERENCE)?.held).toBe("steady");
    expect(heldSpeed(drive(100, 101), TOLERANCE, CIRCUMFERENCE)?.held).toBe("followed");
    // Beyond 4 % to either side of the middle.
    expect(heldSpeed(drive(95, 102), TOLERANCE, CIRCUMFERENCE)?.held).toBe("followed");
    expect(heldSpeed(drive(95, 105), TOLERANCE, CIRCUMFERENCE)?.held).toBe("uneven");
  });

  test("the mean is distance by time", () => {
    expect(heldSpeed(drive(90, 96), TOLERANCE, CIRCUMFERENCE)?.meanKmh).toBeCloseTo(93, 1);
  });

  test("too few readings say nothing", () => {
    expect(heldSpeed(drive(90, 90, { speeds: false }), TOLERANCE, CIRCUMFERENCE)).toBeUndefined();
  });

  test("a wavering speed smears the line; following it brings the wheel back to its rate at the mean speed", () => {
    const recording = drive(94, 100);
    const turning = 97 / 3.6 / (CIRCUMFERENCE / 1000);
    const [blurred] = vibrationPeaks(recording).peaks;
    const [sharp] = vibrationPeaks(atMeanSpeed(recording)).peaks;
    expect(sharp?.hz).toBeCloseTo(turning, 1);
    expect(sharp?.amplitude).toBeGreaterThan(0.4);
    expect(blurred?.amplitude ?? 0).toBeLessThan(0.35);
  });
});

describe("the sharper of two clocks", () => {
  const turning = (kmh: number) => kmh / 3.6 / (CIRCUMFERENCE / 1000);

  test("is that of the mean speed when the car wavered", () => {
    const recording = drive(94, 100);
    const { spectrum, taken } = sharpestPeaks([recording, atMeanSpeed(recording)], TOLERANCE);
    expect(taken).toBe(1);
    expect(spectrum.peaks.map(({ hz }) => Math.round(hz * 10) / 10)).toEqual([
      Math.round(turning(97) * 10) / 10,
    ]);
  });

  test("is its own when only the readings of the speed wavered", () => {
    const uniform = seededUniform(8);
    const steady = drive(97, 97, { seconds: 60 });
    const speeds = steady.speeds.map(({ time, kmh }) => ({ time, kmh: kmh + 1.5 * standardNormal(uniform) }));
    const recording = { ...steady, speeds };
    const { spectrum, taken } = sharpestPeaks([recording, atMeanSpeed(recording)], TOLERANCE);
    expect(taken).toBe(0);
    expect(spectrum.peaks[0]?.hz).toBeCloseTo(turning(97), 1);
  });

  test("a line that wavered is named once, by its strongest piece", () => {
    const recording = drive(94, 100, { seconds: 30 });
    expect(vibrationPeaks(recording).peaks.length).toBeGreaterThan(1);
    // The blur is 6 % of the rate wide, the pieces are within 4 % of the strongest.
    const named = vibrationPeaks(recording, TOLERANCE).peaks;
    expect(named.length).toBeLessThan(vibrationPeaks(recording).peaks.length);
    for (const [i, { hz }] of named.entries())
      for (const other of named.slice(i + 1))
        expect(Math.abs(other.hz - hz)).toBeGreaterThanOrEqual(TOLERANCE * 0.96 * hz);
  });
});

describe("what is too fast for the sensor", () => {
  // Sampling theorem: at 60 readings a second 53 Hz and 7 Hz give the same readings.
  test.each([
    [53, 60, 7],
    [40, 60, 20],
    [67, 60, 7],
    [14, 60, 14],
  ])("%f Hz read %f times a second shows at %f Hz", (hz, rate, shows) => {
    expect(foldedHz(hz, rate)).toBeCloseTo(shows, 9);
    for (let k = 0; k < 5; k++) {
      expect(Math.cos((2 * Math.PI * hz * k) / rate)).toBeCloseTo(
        Math.cos((2 * Math.PI * shows * k) / rate),
        9,
      );
    }
  });

  test("an order above half the rate is named where it shows; one below, or faster than the rate itself, is not", () => {
    const order = (hz: number) => ({ shaft: "engine", order: hz / 40, hz, tolerance: 0.03 }) as const;
    const found = foldedOrders([order(20), order(40), order(44), order(80)], 20.5, 60, 0.1);
    expect(found.map(({ hz, showsAtHz }) => [hz, showsAtHz])).toEqual([[40, 20]]);
    expect(foldedOrders([order(40)], 22, 60)).toEqual([]);
  });
});

test("readings that stop for a while are a gap; a reading that is left out now and then is none", () => {
  const rows = Array.from({ length: 1200 }, (_, k) => [k / 60 + (k > 600 ? 2.5 : 0), 0, 0, 9.8]);
  expect(recordingGaps(readRecording(rows.filter((_, k) => k % 50 !== 7)))).toEqual({
    count: 1,
    seconds: expect.closeTo(2.5 + 1 / 60, 6),
  });
});
