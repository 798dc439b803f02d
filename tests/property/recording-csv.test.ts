import fc from "fast-check";
import { expect, test } from "vitest";
import { CornerwiseError } from "../../lib/errors.ts";
import { readRecordingCsv, type Sample, writeRecordingCsv } from "../../lib/car/recording-csv.ts";

// A file of text has no sign on its zero.
const figure = fc.double({ noNaN: true, noDefaultInfinity: true }).map((v) => v + 0);
const speed = fc.double({ min: 0, max: 400, noNaN: true }).map((v) => v + 0);
const sample = fc.oneof(
  fc.tuple(figure, figure, figure, figure),
  fc.tuple(figure, figure, figure, figure, speed),
);

test("a recording written as CSV is read back to the last digit", () => {
  fc.assert(
    fc.property(fc.array(sample, { minLength: 1, maxLength: 50 }), (made) => {
      const samples: Sample[] = made.toSorted((a, b) => a[0] - b[0]);
      expect(readRecordingCsv(writeRecordingCsv(samples))).toEqual(samples);
    }),
    { numRuns: 300, seed: 20261128 },
  );
});

test("a spoilt file is read whole or refused in words that begin with the line", () => {
  const cut = fc
    .tuple(
      fc.nat(),
      fc.nat(30),
      fc.constantFrom("", ",", ";", '"', "\n", "\u0000", "1e999", "x", "-", "\uFEFF"),
    )
    .map(([from, length, instead]) => {
      const text = writeRecordingCsv(
        Array.from({ length: 20 }, (_, k) => [k / 60, 0.1 * k, -k, 9.8, 80 + k]),
      );
      const at = from % text.length;
      return text.slice(0, at) + instead + text.slice(at + length);
    });
  let taken = 0;
  let refused = 0;
  fc.assert(
    fc.property(fc.oneof(cut, fc.string({ unit: "binary" })), (text) => {
      try {
        const samples = readRecordingCsv(text);
        expect(samples.flat().every(Number.isFinite)).toBe(true);
        taken += 1;
      } catch (error) {
        expect(error).toBeInstanceOf(CornerwiseError);
        expect((error as CornerwiseError).message).toMatch(/^Line \d+: .{10,}/s);
        refused += 1;
      }
    }),
    { numRuns: 1000, seed: 20261128 },
  );
  expect(taken).toBeGreaterThan(50);
  expect(refused).toBeGreaterThan(300);
});
