import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { matchOrders, vibrationOrders } from "../../lib/car/orders.ts";
import { shaftRates } from "../../lib/car/shaft-rates.ts";
import { CornerwiseError } from "../../lib/errors.ts";
import { answerOrdersRequest } from "../../lib/requests/orders-request.ts";
import { answerWeighRequest } from "../../lib/requests/weigh-request.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";

const knowledge = shippedKnowledge();
const ask = (request: object) => answerOrdersRequest(knowledge, request);
const BASE = { tyre: "205/55R16", speedKmh: 100 };

const positive = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const running = fc.record({
  circumferenceMm: positive(1000, 3500),
  speedKmh: positive(5, 250),
  finalDrive: positive(2, 6),
  gearRatio: positive(0.5, 5),
});

describe("rates of the shafts", () => {
  it("keep their ratios at every speed and grow in step with it", () => {
    fc.assert(
      fc.property(running, positive(1.01, 3), (run, faster) => {
        const rates = shaftRates(run);
        expect(rates.propshaft).toBeCloseTo(rates.wheel * run.finalDrive, 8);
        expect(rates.engine).toBeCloseTo(rates.wheel * run.finalDrive * run.gearRatio, 6);
        const more = shaftRates({ ...run, speedKmh: run.speedKmh * faster });
        for (const shaft of ["wheel", "propshaft", "engine"] as const) {
          expect((more[shaft] ?? 0) / (rates[shaft] ?? 1)).toBeCloseTo(faster, 9);
        }
        const larger = shaftRates({ ...run, circumferenceMm: run.circumferenceMm * faster });
        expect(larger.wheel).toBeLessThan(rates.wheel);
      }),
    );
  });

  it("leave out what cannot be worked out, and take a read engine speed before the gear's", () => {
    const run = { circumferenceMm: 1928, speedKmh: 100 };
    expect(Object.keys(shaftRates(run))).toEqual(["wheel"]);
    expect(Object.keys(shaftRates({ ...run, gearRatio: 1 }))).toEqual(["wheel"]);
    expect(shaftRates({ ...run, finalDrive: 3, gearRatio: 1, rpm: 1200 }).engine).toBe(20);
  });

  it("refuse what is no positive number, naming the field", () => {
    for (const [field, value] of [
      ["speedKmh", 0],
      ["circumferenceMm", -1],
      ["rpm", Number.NaN],
      ["finalDrive", Number.POSITIVE_INFINITY],
    ] as const) {
      expect(() => shaftRates({ circumferenceMm: 1928, speedKmh: 100, [field]: value })).toThrow(
        new RegExp(`^${field} is .*above 0`),
      );
    }
  });
});

describe("orders of a car", () => {
  const shafts = (drive?: string) =>
    new Set(
      vibrationOrders(
        knowledge,
        { wheel: 14, propshaft: 45 },
        new Map(drive === undefined ? [] : [["drive", drive]]),
      ).map(({ shaft }) => shaft),
    );

  it("have no propshaft where only the front wheels are driven; where it is not known, it may be there", () => {
    expect(shafts("front")).toEqual(new Set(["wheel"]));
    for (const drive of ["rear", "all", "part-time", undefined])
      expect(shafts(drive), drive).toEqual(new Set(["wheel", "propshaft"]));
  });

  it("come slowest first, and need the number of cylinders for findings of the engine", () => {
    const orders = vibrationOrders(knowledge, { wheel: 14, engine: 50 }, new Map());
    expect(orders.map(({ hz }) => hz)).toEqual(orders.map(({ hz }) => hz).sort((a, b) => a - b));
    expect(orders.filter((o) => o.shaft === "engine" && o.observation !== undefined)).toEqual([]);
    expect(() => vibrationOrders(knowledge, { wheel: 14 }, new Map(), 2.5)).toThrow(CornerwiseError);
  });
});

describe("a measured frequency", () => {
  const orders = vibrationOrders(knowledge, { wheel: 14, propshaft: 50 }, new Map());

  it("finds the order that it was made from, whatever the order, within the tolerance and no further", () => {
    fc.assert(
      fc.property(
        running,
        fc.nat(),
        fc.double({ min: -1, max: 1, noNaN: true }),
        fc.constantFrom(0.99, 1.01),
        (run, pick, within, beyond) => {
          const all = vibrationOrders(knowledge, shaftRates(run), new Map(), 4);
          const made = all[pick % all.length];
          if (made === undefined) throw new Error("no order");
          const has = (hz: number) =>
            matchOrders(all, hz).some((o) => o.shaft === made.shaft && o.order === made.order);
          expect(has(made.hz * (1 + 0.999 * within * made.tolerance))).toBe(true);
          const edge = 1 + Math.sign(within || 1) * made.tolerance * beyond;
          expect(has(made.hz * edge)).toBe(beyond < 1);
        },
      ),
    );
  });

  it("gives the nearest first, and a tolerance and a resolution of one's own", () => {
    const first = matchOrders(orders, 14.2);
    expect(first.map(({ shaft, order }) => [shaft, order])).toEqual([["wheel", 1]]);
    expect(first[0]?.off).toBeCloseTo(0.2 / 14, 10);
    expect(matchOrders(orders, 14.2, { tolerance: 0.01 })).toEqual([]);
    expect(matchOrders(orders, 14.2, { tolerance: 0.01, resolutionHz: 0.1 })).toHaveLength(1);
    const near = matchOrders(orders, 45, { tolerance: 0.2 });
    expect(near.length).toBeGreaterThan(1);
    const off = near.map((o) => Math.abs(o.off));
    expect(off).toEqual([...off].sort((a, b) => a - b));
    for (const bad of [0, -1, Number.NaN]) expect(() => matchOrders(orders, bad)).toThrow(CornerwiseError);
    expect(() => matchOrders(orders, 14, { tolerance: -0.1 })).toThrow(CornerwiseError);
    expect(() => matchOrders(orders, 14, { resolutionHz: Number.NaN })).toThrow(CornerwiseError);
  });
});

describe("an orders request", () => {
  it("makes a finding of a frequency that is one order, which a weigh request takes", () => {
    const answer = ask({ ...BASE, measured: [{ hz: 14.3 }] });
    expect(answer.fits).toEqual([{ shaft: "wheel", order: 1, finding: "vibration-wheel-first-order" }]);
    expect(answer.findings).toEqual([{ id: "vibration-wheel-first-order", state: "present" }]);
    expect(answer.apart).toEqual([]);
    expect(answerWeighRequest(knowledge, { findings: answer.findings }).problems).toEqual([]);
  });

  it("makes none of one that may be two shafts, and says how to tell them apart", () => {
    const rear = { ...BASE, car: { drive: "rear" }, finalDrive: 3.08 };
    const answer = ask({ ...rear, measured: [{ hz: 44 }] });
    expect(answer.fits.map(({ shaft, order }) => `${shaft} ${order}`).sort()).toEqual([
      "propshaft 1",
      "wheel 3",
    ]);
    expect(answer.findings).toEqual([]);
    expect(answer.apart.map(({ shaft }) => shaft)).toEqual(["wheel", "propshaft"]);
    // On a front-wheel drive car there is no propshaft to mix it up with.
    expect(ask({ ...rear, car: { drive: "front" }, measured: [{ hz: 44 }] }).findings).toEqual([
      { id: "vibration-wheel-third-order", state: "present" },
    ]);
  });

  it("tells an engine order from a wheel order by a second speed", () => {
    // 4 cylinders at 865 rpm: the firing order, 28.8 Hz, is the second of the wheel at 100 km/h.
    const one = { hz: 28.8, rpm: 865 };
    const both = ask({ ...BASE, cylinders: 4, measured: [one] });
    expect(both.fits.map(({ shaft }) => shaft).sort()).toEqual(["engine", "wheel"]);
    const second = ask({ ...BASE, cylinders: 4, measured: [one, { hz: 28.8, speedKmh: 80, rpm: 865 }] });
    expect(second.findings).toEqual([{ id: "vibration-engine-firing-order", state: "present" }]);
  });

  it("finds nothing where nothing fits", () => {
    const answer = ask({ ...BASE, measured: [{ hz: 7 }] });
    expect(answer.measured).toEqual([{ hz: 7, speedKmh: 100, matches: [] }]);
    expect(answer.fits).toEqual([]);
    expect(answer.findings).toEqual([]);
  });

  it("takes a measured circumference instead of a size, and mph", () => {
    const answer = ask({ circumferenceMm: 1927.6, speedMph: 100 / 1.609344 });
    expect(answer.speedKmh).toBeCloseTo(100, 10);
    expect(answer.rates.wheel).toBeCloseTo(ask(BASE).rates.wheel, 10);
    expect(answer.tyre).toBeUndefined();
  });

  it.each([
    [{}, /^tyre is missing; give the size/],
    [{ tyre: "205/55R16" }, /^speedKmh is missing/],
    [{ ...BASE, circumferenceMm: 1900 }, /beside tyre; give one/],
    [{ ...BASE, speedMph: 60 }, /speedMph stands beside speedKmh/],
    [{ ...BASE, tyre: "7.50R16LT" }, /^tyre: "7.50R16LT" names neither/],
    [{ ...BASE, measured: [{ hz: 10, speedKmh: 1, speedMph: 1 }] }, /^measured\.0: speedMph/],
    [{ ...BASE, cylinders: 2.5 }, /cornerwise schema orders-request/],
    [{ ...BASE, colour: "red" }, /cornerwise schema orders-request/],
    [{ ...BASE, car: { drive: "sideways" } }, /^car\.drive/],
  ])("%j is refused with what, where and how to mend it", (request, message) => {
    let error: unknown;
    try {
      ask(request);
    } catch (caught) {
      error = caught;
    }
    expect(error).toMatchObject({ code: "bad-request", message: expect.stringMatching(message) });
  });
});
