import { expect, test } from "vitest";
import { lombScargle } from "../../lib/maths/lomb-scargle.ts";

/* Against a general-purpose library: scipy.signal.lombscargle of SciPy 1.17.1, precentred values, not normalised. */

const times = Float64Array.from({ length: 40 }, (_, k) => k / 10 + 0.03 * Math.sin(7 * k));
const values = times.map(
  (t, k) =>
    1.5 * Math.sin(2 * Math.PI * 2.3 * t + 0.4) +
    0.5 * Math.cos(2 * Math.PI * 4.1 * t) +
    0.1 * Math.cos(11 * k),
);

test.each([
  [0.5, 6.22253249e-3],
  [1.0, 3.45140228e-2],
  [2.3, 21.3880082],
  [3.0, 0.2985168],
  [4.1, 2.73160528],
  [4.9, 0.443769324],
])("the power at %f Hz is that of the library", (hz, power) => {
  const { power: own } = lombScargle(times, [values], { fromHz: hz, stepHz: 0.1, count: 1 });
  expect(own[0]).toBeCloseTo(power, 6);
});

test("a long grid keeps the figures of its single frequencies, and axes add up", () => {
  const count = 1000;
  const grid = lombScargle(times, [values, values], { fromHz: 0.5, stepHz: 0.005, count });
  for (const k of [0, 1, 255, 256, 700, 999]) {
    const alone = lombScargle(times, [values], { fromHz: 0.5 + 0.005 * k, stepHz: 1, count: 1 });
    expect(grid.power[k]).toBeCloseTo(2 * (alone.power[0] as number), 9);
  }
});
