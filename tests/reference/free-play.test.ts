import { describe, expect, it } from "vitest";
import { playDegrees } from "../../lib/car/free-play.ts";
import { answerPlayRequest } from "../../lib/requests/play-request.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";

const INCH = 25.4;

interface Asked {
  quantity: string;
  value: number;
  unit: "mm" | "in" | "deg";
  circle?: { value: number; unit: "mm" | "in" };
  rim?: { value: number; unit: "mm" | "in" };
}

/** How a movement stands to the rule. */
function standing(id: string, asked: Asked) {
  const limit = answerPlayRequest(shippedKnowledge(), asked).limits.find((l) => l.id === id);
  if (limit === undefined) throw new Error(`there is no limit ${id}`);
  return limit;
}

const inches = (value: number) => ({ value, unit: "in" as const });
const mm = (value: number) => ({ value, unit: "mm" as const });

/* A-US-01. Source: 49 CFR 570.7(a) Table 1; the same figures in 570.60(a) Table 2. */
describe("free play at the steering wheel rim, United States", () => {
  const rows = [
    [14, 2],
    [16, 2],
    [18, 2.25],
    [20, 2.5],
    [22, 2.75],
  ] as const;

  it.each(rows)("a wheel of %i in may move %d in, no more", (diameter, most) => {
    for (const id of ["us-steering-rim", "us-steering-rim-heavy"]) {
      const at = (value: number) =>
        standing(id, { quantity: "steering-rim", ...inches(value), circle: inches(diameter) });
      expect(at(most - 0.001).standing).toBe("under");
      expect(at(most).standing).toBe("at");
      expect(at(most + 0.001).standing).toBe("over");
      expect(at(most).most?.in).toBeCloseTo(most, 12);
      expect(at(most).rule).toContain("49 CFR 570.");
    }
  });

  it.each(rows)("the same in mm: %i in, %d in", (diameter, most) => {
    const at = (value: number) =>
      standing("us-steering-rim", {
        quantity: "steering-rim",
        ...mm(value),
        circle: mm(diameter * INCH),
      }).standing;
    expect([at(most * INCH - 0.01), at(most * INCH), at(most * INCH + 0.01)]).toEqual([
      "under",
      "at",
      "over",
    ]);
  });

  /* A-US-02. Source: worked apart from this code from the table's rows: 0.25 rad. */
  it.each([16, 17, 18, 19.3, 20, 22])("on %d in it is 14.324 degrees", (diameter) => {
    const { most } = standing("us-steering-rim", {
      quantity: "steering-rim",
      ...inches(1),
      circle: inches(diameter),
    });
    expect(most?.deg).toBeCloseTo(14.324, 3);
  });

  it("is level below 16 in and above 22 in", () => {
    const most = (diameter: number) =>
      standing("us-steering-rim", { quantity: "steering-rim", ...inches(1), circle: inches(diameter) }).most
        ?.in;
    expect(most(13)).toBe(2);
    expect(most(24)).toBe(2.75);
  });

  /* A-US-18. Source: Missouri 11 CSR 50-2.200(1)(B): over 2 in up to 18 in, over 3 in above. */
  it.each([
    [18, 2],
    [18.01, 3],
    [20, 3],
  ])("Missouri: a wheel of %d in may move %d in", (diameter, most) => {
    const at = (value: number) =>
      standing("us-mo-steering-rim", {
        quantity: "steering-rim",
        ...inches(value),
        circle: inches(diameter),
      });
    expect([at(most - 0.001), at(most), at(most + 0.001)].map((l) => l.standing)).toEqual([
      "under",
      "at",
      "over",
    ]);
    expect(at(most).country).toBe("US-MO");
  });
});

describe("play of a road wheel, United States", () => {
  /* A-US-03. Source: 49 CFR 570.7(b): 1/4 in (6.35 mm) at the tread, light vehicles. */
  it("may be 1/4 in", () => {
    const at = (value: number) => standing("us-linkage", { quantity: "linkage", ...mm(value) });
    expect([at(6.34), at(6.35), at(6.36)].map((l) => l.standing)).toEqual(["under", "at", "over"]);
    expect(standing("us-linkage", { quantity: "linkage", ...inches(0.25) }).standing).toBe("at");
    expect(at(6.35).rule).toBe("49 CFR 570.7(b)");
  });

  /* A-US-04. Source: 49 CFR 570.60(b) Table 3, heavy vehicles, by the diameter of rim or bead. */
  it.each([
    [15, 0.25],
    [16, 0.25],
    [16.01, 0.375],
    [18, 0.375],
    [18.01, 0.5],
    [22.5, 0.5],
  ])("heavy: a rim of %d in, %d in", (rim, most) => {
    const at = (value: number) =>
      standing("us-linkage-heavy", { quantity: "linkage", ...inches(value), rim: inches(rim) }).standing;
    expect([at(most - 0.001), at(most), at(most + 0.001)]).toEqual(["under", "at", "over"]);
    const inMm = standing("us-linkage-heavy", { quantity: "linkage", ...mm(1), rim: mm(rim * INCH) });
    expect(inMm.most?.in).toBeCloseTo(most, 12);
  });

  it("says which diameter is missing for the rule that goes by the rim", () => {
    const limit = standing("us-linkage-heavy", { quantity: "linkage", ...mm(6), circle: mm(632) });
    expect(limit).toMatchObject({ standing: "unknown", needs: "rim" });
    expect(limit.most).toBeUndefined();
  });

  /* A-US-05. Source: worked apart from this code: 1/4 in at the tread. */
  it.each([
    [584, 1.246],
    [632, 1.151],
    [688, 1.058],
  ])("1/4 in on a tyre of %i mm is a swing of %d degrees", (tyre, degrees) => {
    expect(playDegrees(6.35, tyre)).toBeCloseTo(degrees, 3);
    expect(standing("us-linkage", { quantity: "linkage", ...mm(1), circle: mm(tyre) }).most?.deg).toBeCloseTo(
      degrees,
      3,
    );
  });
});

/* A-US-12. Source: 49 CFR 570.10(b): run-out at the bead 1/8 in total indicated (3.175 mm; often rounded to 3.18). */
describe("run-out of the rim at the bead, United States", () => {
  it("may be 1/8 in", () => {
    const at = (value: number) =>
      standing("us-rim-run-out", { quantity: "rim-run-out", ...inches(value) }).standing;
    expect([at(0.124), at(0.125), at(0.126)]).toEqual(["under", "at", "over"]);
    expect(standing("us-rim-run-out", { quantity: "rim-run-out", ...mm(1) }).most?.mm).toBeCloseTo(3.175, 10);
  });
});

/* A-UK-02, A-UK-03. Source: MOT inspection manual 2012 onwards, section 2.2, on a wheel of 380 mm; degrees worked apart. */
describe("free play at the steering wheel rim, Great Britain and the European Union", () => {
  it.each([
    ["gb-steering-rim-rack", 13, 3.92],
    ["gb-steering-rim-rack-joints", 48, 14.475],
    ["gb-steering-rim-other", 75, 22.617],
  ])("%s: %i mm, %d degrees", (id, most, degrees) => {
    const at = (value: number) => standing(id, { quantity: "steering-rim", ...mm(value), circle: mm(380) });
    expect([at(most - 0.01), at(most), at(most + 0.01)].map((l) => l.standing)).toEqual([
      "under",
      "at",
      "over",
    ]);
    expect(at(most).most?.deg).toBeCloseTo(degrees, 3);
    // A-UK-02: the limit goes with the size of the wheel, so that its angle stays.
    const larger = standing(id, { quantity: "steering-rim", ...mm(1), circle: mm(420) });
    expect(larger.most?.mm).toBeCloseTo((most * 420) / 380, 10);
    expect(larger.most?.deg).toBeCloseTo(degrees, 3);
  });

  /* Source: Directive 2014/45/EU, Annex I, item 2.3: a fifth of the wheel's diameter; from memory. */
  it("the Union's fifth of the diameter is 76 mm on 380 mm, near the 75 mm of Great Britain", () => {
    const at = (value: number) =>
      standing("eu-steering-rim", { quantity: "steering-rim", ...mm(value), circle: mm(380) });
    expect([at(75.99), at(76), at(76.01)].map((l) => l.standing)).toEqual(["under", "at", "over"]);
    expect(at(1).most?.mm).toBeCloseTo(76, 10);
  });

  it("the 48 mm of Great Britain and the angle of the United States agree within 0.15 degrees", () => {
    const deg = (id: string, circle: Asked["circle"]) =>
      standing(id, { quantity: "steering-rim", ...mm(1), circle: circle ?? mm(380) }).most?.deg ?? Number.NaN;
    const gap = deg("gb-steering-rim-rack-joints", mm(380)) - deg("us-steering-rim", inches(16));
    expect(Math.abs(gap)).toBeLessThan(0.1515);
  });

  it("keeps the rules of the car's own kind of steering", () => {
    const ids = (steering: string) =>
      answerPlayRequest(shippedKnowledge(), {
        quantity: "steering-rim",
        ...mm(20),
        country: "GB",
        car: { steering },
      }).limits.map(({ id }) => id);
    expect(ids("rack-electric")).toEqual(["gb-steering-rim-rack", "gb-steering-rim-rack-joints"]);
    expect(ids("box-manual")).toEqual(["gb-steering-rim-other"]);
  });
});

describe("tread and lining that must be left", () => {
  /*
   * A-US-15: 49 CFR 570.62(a), heavy vehicles: 4/32 in on front tyres, 2/32 in elsewhere. A-US-16: 570.9(a), light vehicles:
   * 2/32 in, from memory (Maryland COMAR 11.14.05.05 says the same). A-UK-06: 1.6 mm; Directive 2014/45/EU, item 5.2.3: 1.6 mm,
   * from memory. A-US-17: 570.59(c): 1/32 in over rivets, 1/16 in over the shoe; 570.5 (light): 1/32 in, from memory.
   */
  it.each([
    ["us-tread", "tread-depth", 2 / 32],
    ["us-tread-heavy-front", "tread-depth", 4 / 32],
    ["us-tread-heavy-other", "tread-depth", 2 / 32],
    ["us-lining-bonded", "lining-bonded", 1 / 32],
    ["us-lining-bonded-heavy", "lining-bonded", 1 / 16],
    ["us-lining-riveted", "lining-riveted", 1 / 32],
    ["us-lining-riveted-heavy", "lining-riveted", 1 / 32],
  ])("%s: %s at least %d in", (id, quantity, least) => {
    const at = (value: number) => standing(id, { quantity, ...inches(value) });
    expect([at(least - 0.001), at(least), at(least + 0.001)].map((l) => l.standing)).toEqual([
      "under",
      "at",
      "over",
    ]);
    expect(at(1).least?.in).toBeCloseTo(least, 12);
    expect(at(1).most).toBeUndefined();
    expect(standing(id, { quantity, ...mm(least * INCH) }).standing).toBe("at");
    expect(at(1).rule).toContain("49 CFR 570.");
  });

  it.each(["gb-tread", "eu-tread"])("%s: 1.6 mm", (id) => {
    const at = (value: number) => standing(id, { quantity: "tread-depth", ...mm(value) });
    expect([at(1.59), at(1.6), at(1.61)].map((l) => l.standing)).toEqual(["under", "at", "over"]);
    expect(at(1.6).least?.mm).toBeCloseTo(1.6, 12);
  });

  /* Worked by hand: 2/32 in = 1.5875 mm, a little less than 1.6 mm. */
  it("a tyre that just holds in the United States does not in Great Britain", () => {
    const asked = { quantity: "tread-depth", ...inches(2 / 32) };
    expect(standing("us-tread", asked).standing).toBe("at");
    expect(standing("gb-tread", asked).standing).toBe("under");
  });
});
