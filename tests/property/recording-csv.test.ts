import fc from "fast-check";
import { expect, test } from "vitest";
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
