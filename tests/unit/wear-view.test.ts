import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { groundCar, wearView } from "../../lib/engine/index.ts";
import { CornerwiseError } from "../../lib/errors.ts";
import type { Knowledge } from "../../lib/knowledge/schema/compiled.ts";
import { answerWearRequest } from "../../lib/requests/wear-request.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";
import { patch, tinyKnowledge } from "../support/tiny-knowledge.ts";

const shipped = shippedKnowledge();
const { knowledge: tiny } = tinyKnowledge();
const STRUT = { front: { layout: "strut" } };

const values = (path: string): (string | undefined)[] => {
  const attribute = shipped.car.attributes.find((a) => a.path === path);
  return [undefined, ...(attribute?.kind === "choice" ? attribute.values.map(({ id }) => id) : [])];
};
const cars = fc.record({
  drive: fc.constantFrom(...values("drive")),
  roads: fc.constantFrom(...values("roads")),
  salt: fc.constantFrom(...values("salt")),
  load: fc.constantFrom(...values("load")),
  odometerKm: fc.option(fc.integer({ min: 0, max: 600_000 }), { nil: undefined }),
  ageYears: fc.option(fc.integer({ min: 0, max: 40 }), { nil: undefined }),
});
const happened = fc.subarray(shipped.contexts.map(({ id }) => id));

function lineOf(
  knowledge: Knowledge,
  car: object,
  fitted: NonNullable<Parameters<typeof wearView>[2]>["fitted"] = [],
) {
  const line = wearView(knowledge, { ...car }, { fitted, aheadKm: [10_000, 20_000] }).find(
    ({ fault, place }) => fault === "bar-link-worn" && place === "front-left",
  );
  if (line === undefined) throw new Error("the bar link has no line");
  return line;
}

describe("wear now", () => {
  it("is the prior of weighing, whatever the car and whatever happened", () => {
    fc.assert(
      fc.property(cars, happened, (car, contexts) => {
        const grounded = groundCar(shipped, car, contexts);
        const lines = wearView(shipped, car, { contexts });
        expect(lines.length).toBeGreaterThan(50);
        for (const { fault, place, now } of lines) {
          const at = grounded.suspectIndex.get(`${fault}@${place}`);
          expect(now, `${fault}@${place}`).toBeCloseTo(at === undefined ? 0 : (grounded.prior[at] ?? 0), 6);
        }
      }),
      { numRuns: 15 },
    );
  });

  it("is there for every fault with a wear life, at every place, and for no other", () => {
    const worn = shipped.faults.filter(({ life }) => !("share" in life));
    const ids = new Set(wearView(shipped, {}).map(({ fault }) => fault));
    expect([...ids].sort()).toEqual(worn.map(({ id }) => id).sort());
    const tinyIds = wearView(tiny, STRUT).map(({ fault, place }) => `${fault}@${place}`);
    expect(tinyIds.sort()).toEqual([
      "bar-link-worn@front-left",
      "bar-link-worn@front-right",
      "rack-worn@front",
    ]);
    expect(wearView(tiny, { front: { layout: "wishbone" } }).map(({ fault }) => fault)).toEqual([
      "rack-worn",
    ]);
  });
});

describe("wear ahead", () => {
  it("lies in 0..1, grows with the distance, and is never above the share of cars that have the part", () => {
    fc.assert(
      fc.property(cars, happened, (car, contexts) => {
        for (const line of wearView(shipped, car, { contexts, aheadKm: [1000, 10_000, 20_000, 200_000] })) {
          expect(line.now).toBeGreaterThanOrEqual(0);
          expect(line.now).toBeLessThanOrEqual(line.onCar + 1e-12);
          line.ahead.forEach(({ chance, ifNeverRenewed }, i) => {
            const before = line.ahead[i - 1];
            expect(chance).toBeGreaterThanOrEqual(before?.chance ?? 0);
            expect(chance).toBeLessThanOrEqual(line.onCar + 1e-12);
            expect(ifNeverRenewed).toBeGreaterThanOrEqual(before?.ifNeverRenewed ?? 0);
            expect(ifNeverRenewed).toBeLessThanOrEqual(1);
          });
        }
      }),
      { numRuns: 15 },
    );
  });

  it("grows with the age of a part that is known to be the first, when it wears (shape above 1)", () => {
    const ages = [1000, 50_000, 100_000, 200_000, 500_000, 1_000_000];
    const chances = ages.map((odometerKm) => {
      const fitted = [{ part: "bar-link", atKm: 0 }];
      return lineOf(tiny, { ...STRUT, odometerKm }, fitted).ahead[0]?.chance ?? 0;
    });
    expect(chances).toEqual([...chances].sort((a, b) => a - b));
    expect(new Set(chances).size).toBeGreaterThan(4);
  });

  it("does not outgrow the renewal rate where earlier renewals are not known", () => {
    // Long-run rate 1 / mean life; mean = 0.9 x 120,000 km x gamma(1.4), gamma(1.4) = 0.887264 (tables, from memory).
    const mean = 0.9 * 120_000 * 0.887264;
    const old = lineOf(tiny, { ...STRUT, odometerKm: 600_000 }).ahead[0];
    expect(old?.chance).toBeCloseTo(1 - Math.exp(-10_000 / mean), 5);
    expect(old?.ifNeverRenewed ?? 0).toBeGreaterThan(0.5);
  });

  it("weighs what is not known of the car by how well it would have lasted", () => {
    // Half the cars of one kind, life 1; half of the other, life 0.5; shape 2, at 1, next 0.5 (worked by hand).
    const { knowledge } = tinyKnowledge((records) => {
      const car = records["car.json"] as { attributes: { values: { share: number }[] }[] };
      for (const value of car.attributes[0]?.values ?? []) value.share = 0.5;
      patch(records, "parts/bar-link.json", { when: true });
      patch(records, "faults/bar-link-worn.json", {
        life: { km: 100_000, shape: 2 },
        modifiers: [{ when: { "==": [{ var: "front.layout" }, "wishbone"] }, life: 0.5, why: "Invented." }],
      });
    });
    const line = wearView(knowledge, { odometerKm: 100_000 }, { aheadKm: [50_000] }).find(
      ({ fault }) => fault === "bar-link-worn",
    );
    const [one, half] = [Math.exp(-1), Math.exp(-4)];
    const lasts = (one * Math.exp(1 - 2.25) + half * Math.exp(4 - 9)) / (one + half);
    expect(line?.ahead[0]?.ifNeverRenewed).toBeCloseTo(1 - lasts, 12);
    expect(line?.modifiers).toEqual([{ why: "Invented.", life: 0.5, odds: 1, chance: 0.5 }]);
    expect(line?.onCar).toBeCloseTo(1, 12);
  });

  it("counts a life in years by this car's km a year", () => {
    const rack = (car: object) =>
      wearView(tiny, { ...car }, { aheadKm: [10_000], fitted: [{ part: "rack", yearsAgo: 10 }] }).find(
        ({ fault }) => fault === "rack-worn",
      );
    // Shape 2, life 20 years: H = (t / 20)^2. At 10,000 km a year one more year, at 20,000 half of one.
    const slow = rack({ odometerKm: 100_000, ageYears: 10 });
    expect(slow?.ahead[0]?.chance).toBeCloseTo(1 - Math.exp(0.25 - (11 / 20) ** 2), 10);
    const fast = rack({ odometerKm: 200_000, ageYears: 10 });
    expect(fast?.ahead[0]?.chance).toBeCloseTo(1 - Math.exp(0.25 - (10.5 / 20) ** 2), 10);
  });
});

describe("a part that was fitted", () => {
  const car = { ...STRUT, odometerKm: 150_000, ageYears: 12 };

  it("is as old as it is, and less likely to have failed", () => {
    const asCar = lineOf(tiny, car);
    const renewed = lineOf(tiny, car, [{ part: "bar-link", atKm: 140_000 }]);
    expect(asCar.age).toEqual({ km: 150_000, years: 12, ownAge: false });
    expect(renewed.age).toMatchObject({ km: 10_000, ownAge: true });
    expect(renewed.age.years).toBeCloseTo(0.8, 10);
    expect(renewed.now).toBeLessThan(asCar.now / 2);
    expect(renewed.ahead[1]?.chance ?? 1).toBeLessThan(asCar.ahead[1]?.chance ?? 0);
  });

  it("counts at its place, or at the places within a wider one; the youngest of several", () => {
    const left = (fitted: { part: string; place?: string; atKm?: number; yearsAgo?: number }[]) =>
      lineOf(tiny, car, fitted).age;
    expect(left([{ part: "bar-link", place: "front-left", atKm: 100_000 }]).km).toBe(50_000);
    expect(left([{ part: "bar-link", place: "front-right", atKm: 100_000 }]).ownAge).toBe(false);
    expect(left([{ part: "bar-link", place: "front", atKm: 100_000 }]).km).toBe(50_000);
    expect(left([{ part: "ball-joint", atKm: 100_000 }]).ownAge).toBe(false);
    expect(left([{ part: "bar-link", yearsAgo: 6 }]).km).toBeCloseTo(75_000, 6);
    const twice = [
      { part: "bar-link", atKm: 140_000 },
      { part: "bar-link", place: "front-left", atKm: 60_000 },
    ];
    expect(left(twice).km).toBe(10_000);
    expect(left(twice.reverse()).km).toBe(10_000);
  });

  it.each([
    [{ part: "no-part", atKm: 1 }, "unknown-id", /^fitted\.0\.part: .*cornerwise parts/],
    [{ part: "bar-link", place: "nowhere", atKm: 1 }, "unknown-id", /^fitted\.0\.place: .*front-left/],
    [{ part: "bar-link" }, "bad-request", /^fitted\.0 has no age; give atKm/],
    [{ part: "bar-link", atKm: 150_001 }, "bad-request", /atKm is 150001; .*0 to 150000 km/],
    [{ part: "bar-link", atKm: Number.NaN }, "bad-request", /atKm is NaN/],
    [{ part: "bar-link", yearsAgo: 13 }, "bad-request", /yearsAgo is 13; .*car's 12/],
  ])("%j is refused with what, where and how to mend it", (fitted, code, message) => {
    let error: unknown;
    try {
      lineOf(tiny, car, [fitted]);
    } catch (caught) {
      error = caught;
    }
    expect(error).toBeInstanceOf(CornerwiseError);
    expect(error).toMatchObject({ code, message: expect.stringMatching(message) });
  });
});

describe("a wear request", () => {
  it("names parts, faults and the source of each life, likeliest first, and counts what it leaves out", () => {
    const answer = answerWearRequest(shipped, { car: { odometerKm: 150_000 }, limit: 20 });
    expect(answer.wear).toHaveLength(20);
    expect(answer.leftOut).toBe(wearView(shipped, { odometerKm: 150_000 }).length - 20);
    expect(answer.km).toBe(150_000);
    const now = answer.wear.map((line) => line.now);
    expect(now).toEqual([...now].sort((a, b) => b - a));
    for (const line of answer.wear) {
      expect(line.ahead.map(({ km }) => km)).toEqual([10_000, 20_000]);
      expect(shipped.sources.map(({ title }) => title)).toContain(line.life.source);
      expect(line.part).not.toBe("");
    }
  });

  it("answers an empty request for a typical car", () => {
    const answer = answerWearRequest(shipped, {});
    const odometer = shipped.car.attributes.find(({ path }) => path === "odometerKm");
    expect(answer.km).toBe(odometer?.kind === "number" ? odometer.typical : "no odometer");
    expect(answer.wear.length).toBeGreaterThan(10);
  });

  it("refuses what does not follow its schema, and a context that is not there", () => {
    expect(() => answerWearRequest(shipped, { aheadKm: [] })).toThrow(
      /aheadKm: .*cornerwise schema wear-request/,
    );
    expect(() => answerWearRequest(shipped, { contexts: ["no-such-thing"] })).toThrow(/"no-such-thing"/);
  });
});
