import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { playDegrees, playMm } from "../../lib/car/free-play.ts";
import { playLimits } from "../../lib/car/play-limits.ts";
import { CornerwiseError } from "../../lib/errors.ts";
import { answerPlayRequest } from "../../lib/requests/play-request.ts";
import { answerWeighRequest } from "../../lib/requests/weigh-request.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";

const knowledge = shippedKnowledge();
const ask = (request: object) => answerPlayRequest(knowledge, request);
const angles = fc.constantFrom("swing" as const, "tilt" as const);
const diameter = fc.double({ min: 50, max: 1200, noNaN: true });

describe("movement and angle", () => {
  it("go there and back", () => {
    fc.assert(
      fc.property(angles, diameter, fc.double({ min: 0, max: 0.99, noNaN: true }), (angle, mm, share) => {
        const movement = share * mm;
        expect(playMm(playDegrees(movement, mm, angle), mm, angle)).toBeCloseTo(movement, 7);
      }),
    );
  });

  it("grow together, and the angle falls with the diameter", () => {
    fc.assert(
      fc.property(angles, diameter, fc.double({ min: 0.01, max: 0.4, noNaN: true }), (angle, mm, share) => {
        const degrees = playDegrees(share * mm, mm, angle);
        expect(playDegrees(2 * share * mm, mm, angle)).toBeGreaterThan(degrees);
        expect(playDegrees(share * mm, 2 * mm, angle)).toBeLessThan(degrees);
      }),
    );
  });

  it("a full turn is 360 degrees, a disc read its own diameter lies flat", () => {
    expect(playDegrees(Math.PI * 380, 380)).toBeCloseTo(360, 10);
    expect(playDegrees(400, 400, "tilt")).toBeCloseTo(90, 10);
    expect(playDegrees(0, 380)).toBe(0);
  });

  it("never fail otherwise than with their code, and never give NaN", () => {
    fc.assert(
      fc.property(fc.double(), fc.double(), angles, (value, of, angle) => {
        for (const turn of [playDegrees, playMm]) {
          try {
            expect(turn(value, of, angle)).toBeGreaterThanOrEqual(0);
          } catch (error) {
            if (!(error instanceof CornerwiseError)) throw error;
            expect(error.code).toBe("bad-request");
          }
        }
      }),
    );
  });
});

describe("limits", () => {
  it("are passed once and for all as the movement grows", () => {
    const order = ["under", "at", "over"];
    const quantities = fc.constantFrom(...knowledge.limits.quantities.map(({ id }) => id));
    const movement = fc.double({ min: 0, max: 120, noNaN: true });
    fc.assert(
      fc.property(
        quantities,
        movement,
        movement,
        fc.double({ min: 250, max: 900, noNaN: true }),
        (id, a, b, mm) => {
          const stand = (value: number) =>
            playLimits(knowledge, { quantity: id, mm: value, circleMm: mm, rimMm: mm }, new Map());
          const less = stand(Math.min(a, b));
          const more = stand(Math.max(a, b));
          expect(less.length).toBeGreaterThan(0);
          less.forEach(({ standing }, i) => {
            expect(order.indexOf(standing)).toBeGreaterThanOrEqual(0);
            expect(order.indexOf(standing)).toBeLessThanOrEqual(order.indexOf(more[i]?.standing ?? ""));
          });
        },
      ),
    );
  });

  it("are kept by country, with those of its states", () => {
    const countries = (country?: string) =>
      new Set(ask({ quantity: "steering-rim", value: 1, unit: "mm", country }).limits.map((l) => l.country));
    expect(countries("US")).toEqual(new Set(["US", "US-MO"]));
    expect(countries("US-MO")).toEqual(new Set(["US", "US-MO"]));
    expect(countries("US-WA")).toEqual(new Set(["US"]));
    expect(countries("GB")).toEqual(new Set(["GB"]));
    expect(countries("NZ")).toEqual(new Set());
    expect(countries()).toEqual(new Set(["US", "US-MO", "GB", "EU"]));
  });
});

describe("a play request", () => {
  it("gives mm, inches and degrees, the rules, and that the maker's figure decides", () => {
    const answer = ask({ quantity: "linkage", value: 6, unit: "mm", circle: { value: 632, unit: "mm" } });
    expect(answer.in).toBeCloseTo(6 / 25.4, 12);
    expect(answer.deg).toBeCloseTo(1.0879, 4);
    expect(answer.decides).toMatch(/maker's figure.*decides/);
    for (const limit of answer.limits) expect(limit.rule).toMatch(/\d/);
  });

  it("reads degrees on a circle, and a tilt for run-out", () => {
    const circle = { value: 16, unit: "in" };
    const swing = ask({ quantity: "steering-rim", value: 14.3239, unit: "deg", circle });
    expect(swing.in).toBeCloseTo(2, 4);
    const tilt = ask({ quantity: "rim-run-out", value: 0.5, unit: "deg", circle });
    expect(tilt.mm).toBeCloseTo(406.4 * Math.sin((0.5 * Math.PI) / 180), 8);
  });

  it("gives a finding that a weigh request takes, graded by the value", () => {
    const at = (value: number) => {
      const { finding } = ask({ quantity: "linkage", value, unit: "mm", place: "front-left" });
      expect(finding).toEqual({ id: "play-3-9@front-left", value });
      const answer = answerWeighRequest(knowledge, {
        findings: [finding],
        car: { drive: "front", front: { layout: "strut" } },
        limit: 1000,
      });
      expect(answer.problems).toEqual([]);
      return answer.ranking.find(({ suspect }) => suspect.startsWith("tie-rod-end-worn@"))?.present ?? 0;
    };
    expect(at(8)).toBeGreaterThan(at(0.2));
  });

  it("gives a depth in mm and inches, and no degrees of it", () => {
    const answer = ask({ quantity: "tread-depth", value: 3, unit: "mm", circle: { value: 600, unit: "mm" } });
    expect(answer.in).toBeCloseTo(3 / 25.4, 12);
    expect(answer.deg).toBeUndefined();
    expect(answer.limits.every((l) => l.least !== undefined && l.most === undefined)).toBe(true);
  });

  it("never calls a car fit: under is under a rule, and the words beside it say so", () => {
    expect(JSON.stringify(ask({ quantity: "linkage", value: 0, unit: "mm" }))).not.toMatch(
      /\bsafe\b|\bpass/i,
    );
  });

  it.each([
    [{ quantity: "toe", value: 1, unit: "mm" }, "unknown-id", /^quantity: .*"toe".*"steering-rim" \(/],
    [{ quantity: "linkage", value: 1, unit: "deg" }, "bad-request", /^circle is missing.*the tyre/],
    [
      { quantity: "tread-depth", value: 1, unit: "deg", circle: { value: 600, unit: "mm" } },
      "bad-request",
      /^unit: tread .*no degrees.*"mm" or "in"/,
    ],
    [
      { quantity: "linkage", value: -1, unit: "mm" },
      "bad-request",
      /value: .*cornerwise schema play-request/,
    ],
    [{ quantity: "linkage", value: 1, unit: "ft" }, "bad-request", /unit: /],
    [{ quantity: "linkage", value: 1, unit: "mm", country: "usa" }, "bad-request", /country: use a code/],
    [{ quantity: "linkage", value: 1, unit: "mm", place: "roof" }, "unknown-id", /"roof" is no place/],
    [
      { quantity: "linkage", value: 3000, unit: "mm", circle: { value: 600, unit: "mm" } },
      "bad-request",
      /3000 mm on a diameter of 600 mm; look at the units/,
    ],
  ])("%j is refused with what, where and how to mend it", (request, code, message) => {
    let error: unknown;
    try {
      ask(request);
    } catch (caught) {
      error = caught;
    }
    expect(error).toMatchObject({ code, message: expect.stringMatching(message) });
  });
});
