import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parseTyreSize, type TyreSize, tyreGeometry, writeTyreSize } from "../../lib/car/tyre-size.ts";
import { CornerwiseError } from "../../lib/errors.ts";

const SERVICES = [undefined, "91V", "104/102R", "98Y", "120/116Q"] as const;
const service = fc.constantFrom(...SERVICES).map((found) => (found === undefined ? {} : { service: found }));
const rim = fc.constantFrom(10, 13, 14, 15, 16, 16.5, 17, 18, 19, 19.5, 20, 22, 24);

const metric: fc.Arbitrary<TyreSize> = fc
  .record({
    prefix: fc.constantFrom("" as const, "P" as const, "LT" as const, "HL" as const, "T" as const),
    width: fc.integer({ min: 21, max: 81 }),
    aspect: fc.integer({ min: 4, max: 19 }),
    rim,
    van: fc.boolean(),
    service,
  })
  .map(({ prefix, width, aspect, rim, van, service }) => ({
    system: "metric",
    prefix,
    widthMm: width * 5,
    aspect: aspect * 5,
    rim,
    van,
    ...service,
  }));

const flotation: fc.Arbitrary<TyreSize> = fc
  .record({
    above: fc.integer({ min: 8, max: 40 }),
    width: fc.integer({ min: 600, max: 2000 }),
    rim,
    service,
  })
  .map(({ above, width, rim, service }) => ({
    system: "flotation",
    diameterIn: rim + above / 2,
    widthIn: width / 100,
    rim,
    ...service,
  }));

const sizes = fc.oneof(metric, flotation);

describe("a tyre size", () => {
  it.each([
    ["205/55R16", { widthMm: 205, aspect: 55, rim: 16, prefix: "", van: false }],
    [" 205/55 r16  91v ", { widthMm: 205, aspect: 55, rim: 16, service: "91V" }],
    ["P225/50R16", { prefix: "P", widthMm: 225, aspect: 50, rim: 16 }],
    ["195/65ZR15", { widthMm: 195, aspect: 65, rim: 15 }],
    ["245/40ZRF18 (93Y) XL", { widthMm: 245, rim: 18, service: "93Y" }],
    ["255/40R18 99(Y) Extra Load", { widthMm: 255, rim: 18, service: "99Y" }],
    ["195/70R15C 104/102R", { widthMm: 195, rim: 15, van: true, service: "104/102R" }],
    ["LT245/75R16 120/116Q Load Range E", { prefix: "LT", widthMm: 245, rim: 16, service: "120/116Q" }],
    ["245/75R16LT", { prefix: "LT", widthMm: 245 }],
    ["31x10.50R15LT 109Q", { system: "flotation", diameterIn: 31, widthIn: 10.5, rim: 15, service: "109Q" }],
    ["35 X 12.5 R 20 LT", { system: "flotation", diameterIn: 35, widthIn: 12.5, rim: 20 }],
  ])("%s is read", (text, wanted) => {
    expect(parseTyreSize(text)).toMatchObject(wanted);
  });

  it.each([
    ["", /empty.*such as 205\/55R16/],
    ["   ", /empty/],
    ["155R13", /no height.*155\/80R13/],
    ["7.50R16LT", /neither an overall diameter nor a section height.*rolling circumference/],
    ["7.50-16", /neither an overall diameter/],
    ["205/55D16", /construction "D".*measure the rolling circumference/],
    ["205/55-16", /construction "-"/],
    ["31x10.50B15LT", /construction "B"/],
    ["190/65R390", /rim code of 390.*mm/],
    ["205/55R6", /rim code of 6/],
    ["205/55R16.3", /rim code of 16.3/],
    ["204/55R16", /width of 204/],
    ["205/57R16", /height of 57/],
    ["205/10R16", /height of 10/],
    ["17x10.50R15LT", /overall diameter of 17 in on a 15 in rim/],
    ["31x30R15LT", /width of 30 in/],
    ["205/55R16 91V and four of them", /no tyre size/],
    ["205-55-16", /no tyre size/],
    ["a round one", /no tyre size.*31x10\.50R15LT/],
    ["9".repeat(300), /longer than 80/],
  ])("%j is refused with what, where and how to mend it", (text, message) => {
    let error: unknown;
    try {
      parseTyreSize(text);
    } catch (caught) {
      error = caught;
    }
    expect(error).toBeInstanceOf(CornerwiseError);
    expect((error as CornerwiseError).code).toBe("bad-request");
    expect((error as CornerwiseError).message).toMatch(/^tyre: ".*\.$/s);
    expect((error as CornerwiseError).message).toMatch(message);
  });

  it("comes back from its own text", () => {
    fc.assert(
      fc.property(sizes, (size) => {
        expect(parseTyreSize(writeTyreSize(size))).toEqual(size);
      }),
    );
  });

  it("never fails otherwise than with its code, whatever the text", () => {
    const near = fc
      .tuple(sizes, fc.nat(30), fc.string({ maxLength: 3 }))
      .map(
        ([size, at, junk]) => `${writeTyreSize(size).slice(0, at)}${junk}${writeTyreSize(size).slice(at)}`,
      );
    fc.assert(
      fc.property(fc.oneof(fc.string({ unit: "binary", maxLength: 120 }), near), (text) => {
        try {
          const { designDiameterMm, sectionHeightMm } = tyreGeometry(parseTyreSize(text));
          expect(designDiameterMm).toBeGreaterThan(200);
          expect(sectionHeightMm).toBeGreaterThan(0);
        } catch (error) {
          if (!(error instanceof CornerwiseError)) throw error;
          expect(error.code).toBe("bad-request");
        }
      }),
      { numRuns: 2000 },
    );
  });

  it("grows with width, height and rim", () => {
    fc.assert(
      fc.property(metric, (size) => {
        if (size.system !== "metric") return;
        const { designDiameterMm } = tyreGeometry(size);
        expect(tyreGeometry({ ...size, widthMm: size.widthMm + 10 }).designDiameterMm).toBeGreaterThan(
          designDiameterMm,
        );
        expect(tyreGeometry({ ...size, aspect: size.aspect + 5 }).designDiameterMm).toBeGreaterThan(
          designDiameterMm,
        );
        expect(tyreGeometry({ ...size, rim: size.rim + 1 }).designDiameterMm).toBeGreaterThan(
          designDiameterMm,
        );
      }),
    );
  });
});
