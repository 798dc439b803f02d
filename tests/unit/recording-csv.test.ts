import { describe, expect, test } from "vitest";
import { readRecordingCsv } from "../../lib/car/recording-csv.ts";

test("units of the heading are turned into seconds, m/s^2 and km/h", () => {
  // Standard gravity 9.80665 m/s^2 (3rd CGPM, 1901); the mile is 1.609344 km by definition.
  const text = "time (ms),ax [g],ay [g],az [g],speed (mph)\n0,0,0,1,60\n20,0.5,0,1,\n";
  expect(readRecordingCsv(text)).toEqual([
    [0, 0, 0, 9.80665, 60 * 1.609344],
    [0.02, 0.5 * 9.80665, 0, 9.80665],
  ]);
});

test("semicolons, decimal commas, a byte order mark, empty lines and other columns are taken", () => {
  const text = "\uFEFFz_ms2;note;Time_s;x_ms2;y_ms2\r\n9,8;start;0;0,25;-1\r\n\r\n9,7;;0,02;0,5;-1,5\r\n";
  expect(readRecordingCsv(text)).toEqual([
    [0, 0.25, -1, 9.8],
    [0.02, 0.5, -1.5, 9.7],
  ]);
});

test("units that the heading leaves out are chosen, and never guessed", () => {
  const text = "t\tx\ty\tz\n500\t1\t0\t0\n";
  expect(readRecordingCsv(text, { time: "ms", acceleration: "g" })).toEqual([[0.5, 9.80665, 0, 0]]);
  expect(() => readRecordingCsv(text, { acceleration: "g" })).toThrow(
    'Line 1: nothing says the unit of "t"; choose it',
  );
  expect(() => readRecordingCsv(text, { time: "ms" })).toThrow('Line 1: nothing says the unit of "x"');
});

describe("what cannot be read is refused with the line and how to mend it", () => {
  const HEAD = "time (s),x (g),y (g),z (g)\n";
  test.each([
    ["", "Line 1: the file is empty"],
    ["0,1,2,3\n1,1,2,3\n", "Line 1: no column is named time, x, y, z"],
    ["time (s),x (g),z (g)\n", "Line 1: no column is named y;"],
    ["time (s),x (g),gyro x (g),y (g),z (g)\n", 'Line 1: "x (g)" and "gyro x (g)" could both be x'],
    ["time (h),x (g),y (g),z (g)\n", 'Line 1: "h" is no unit of time that is known'],
    ["time (constructor),x (g),y (g),z (g)\n", 'Line 1: "constructor" is no unit of time'],
    [`\n\n${HEAD}0,1,2,3\n0.1,1,two,3\n`, 'Line 5: y is "two"; give a number'],
    [`${HEAD}0,1,2\n`, 'Line 2: z is ""; give a number'],
    [`${HEAD}1,1,2,3\n\n0.5,1,2,3\n`, "Line 4: the time (0.5 s) is before that of the line above (1 s)"],
    ["time (s),x (g),y (g),z (g),speed (m/s)\n0,1,2,3,-1\n", "Line 2: the speed is -3.6 km/h"],
    [`${HEAD}0,1,2,"3\n`, "Line 2: the quotes do not close"],
  ])("%j", (text, message) => {
    expect(() => readRecordingCsv(text)).toThrow(message);
  });

  test("too many samples", () => {
    const lines = Array.from({ length: 60_001 }, (_, i) => `${i},0,0,1`).join("\n");
    expect(() => readRecordingCsv(HEAD + lines)).toThrow("Line 60002: at most 60000 samples");
  });
});
