import { expect, test } from "vitest";
import {
  lookAtPeaks,
  holdsFrequencies,
  readShakeForm,
  takeRecording,
  turningWithPeaks,
} from "../../app/ui/shake/read-shake.ts";
import { writeRecordingCsv } from "../../lib/car/recording-csv.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";

const UNITS = { distance: "km", length: "mm" } as const;
const FIELDS = { circumference: "2000", speed: "72", finalDrive: "3.5" };
const peak = (hz: number) => ({ hz, amplitude: 0.4321, falseAlarm: 0, resolutionHz: 0.05 });

test("frequencies typed on the screen of turning parts are left out of what a recording says", () => {
  const read = readShakeForm({ ...FIELDS, hz0: "17", speed1: "80", hz1: "9" }, undefined, UNITS);
  expect(read.problems).toEqual({});
  expect(read.request).toMatchObject({ speedKmh: 72, circumferenceMm: 2000, measured: [] });
});

test("the speed of the recording goes before the typed one, in the shown unit", () => {
  const held = { meanKmh: 96.56, leastKmh: 96, mostKmh: 97, sharpKmh: undefined, held: "followed" } as const;
  const read = readShakeForm(FIELDS, held, { ...UNITS, distance: "miles" });
  expect(read.request?.speedKmh).toBeCloseTo(96.56, 1);
});

test("two peaks of one recording are two things that shake, each with its own order", () => {
  const knowledge = shippedKnowledge();
  const { request } = readShakeForm(FIELDS, undefined, UNITS);
  // 72 km/h is 20 m/s: 10 turns of 2 m a second, 35 of the shaft.
  const looked = lookAtPeaks(knowledge, {}, { ...EMPTY, peaks: [peak(10.1), peak(29.8), peak(35)] }, request);
  expect(looked.map(({ answer }) => answer?.fits.map(({ shaft, order }) => `${shaft} ${order}`))).toEqual([
    ["wheel 1"],
    ["wheel 3"],
    ["propshaft 1"],
  ]);
});

const EMPTY = {
  periodogram: { fromHz: 3, stepHz: 0.1, power: new Float64Array(10) },
  highestHz: 100,
};

test("peaks go in front of what the case has, once, and never more than an entry holds", () => {
  const read = readShakeForm(FIELDS, undefined, UNITS);
  const former = {
    circumferenceMm: 2000,
    finalDrive: 3.5,
    measured: Array.from({ length: 20 }, (_, k) => ({ hz: k + 1, speedKmh: 50 })),
  };
  const next = turningWithPeaks(read, [peak(10.123), peak(29.8)], former);
  expect(next?.measured).toHaveLength(20);
  expect(next?.measured.slice(0, 3)).toEqual([
    { hz: 10.12, speedKmh: 72, amplitude: 0.432 },
    { hz: 29.8, speedKmh: 72, amplitude: 0.432 },
    { hz: 1, speedKmh: 50 },
  ]);
  expect(turningWithPeaks(read, [peak(10.123)], next)).toBeUndefined();
  expect(
    turningWithPeaks(readShakeForm({ ...FIELDS, finalDrive: "4" }, undefined, UNITS), [peak(10.123)], next),
  ).toBeDefined();
});

test("a kept recording that cannot be read is said, not dropped", () => {
  expect(takeRecording(shippedKnowledge(), "", true)).toEqual({});
  expect(takeRecording(shippedKnowledge(), "oddity", true).failed).toContain("Line 1");
  const short = writeRecordingCsv([[0, 0, 0, 9.8]]);
  expect(takeRecording(shippedKnowledge(), short, true).failed).toContain("at least 8 s");
});

test("frequencies of the case are none that somebody typed and has still to keep", () => {
  const ofCase = { ...FIELDS, hz0: "10.12", hz1: "29.8" };
  expect(holdsFrequencies(ofCase, ofCase)).toBe(false);
  expect(holdsFrequencies({ ...ofCase, speed: "80", hz1: " " }, ofCase)).toBe(false);
  expect(holdsFrequencies({ ...ofCase, hz1: "31" }, ofCase)).toBe(true);
  expect(holdsFrequencies({ ...FIELDS, hz3: "17" }, {})).toBe(true);
});
