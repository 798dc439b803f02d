import { describe, expect, it } from "vitest";
import { moneyWords, ownCosts } from "../../app/text/cost-fields.ts";
import { fieldsOfDraft } from "../../app/text/draft-fields.ts";
import { isMissing, withoutTools } from "../../app/text/tools.ts";
import { fieldsOfTurning, readTurning } from "../../app/ui/shop/rotating-request.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";

const KM = { distance: "km", length: "mm" } as const;
const MILES = { distance: "miles", length: "inch" } as const;

describe("a workshop's own costs", () => {
  const knowledge = shippedKnowledge();
  const [band] = Object.entries(knowledge.costs.bands).find(([, b]) => b.price > 0) ?? [];

  it("takes what was typed, with either decimal sign, and leaves out what is empty", () => {
    const typed = { hourlyRate: "72,5", currency: "gbp", [`band ${band}`]: "0", referFee: " " };
    const { own, problems } = ownCosts(knowledge, typed);
    expect(problems).toEqual({});
    expect(own).toEqual({ hourlyRate: 72.5, currency: "GBP", prices: { [band ?? ""]: 0 } });
  });

  it.each([
    ["hourlyRate", "0"],
    ["hourlyRate", "-5"],
    ["hourlyRate", "90 euros"],
    ["verifyMinutes", "99999"],
    ["currency", "euro"],
  ])("names %s of %j and counts the default in its place", (field, text) => {
    const { own, problems } = ownCosts(knowledge, { [field]: text });
    expect(Object.keys(problems)).toEqual([field]);
    expect(problems[field]).toContain(`"${text}"`);
    expect(own).toEqual({ prices: {} });
  });

  it("writes money in whole units of its currency", () => {
    expect(moneyWords(1234.4, "EUR")).toBe("€1,234");
  });
});

describe("tools that are not here", () => {
  it("counts one of several that would do as enough", () => {
    expect(isMissing("stethoscope or chassis ears", ["stethoscope"])).toBe(false);
    expect(isMissing("stethoscope or chassis ears", ["stethoscope", "chassis ears"])).toBe(true);
    expect(isMissing("stethoscope or chassis ears", ["stethoscope or chassis ears"])).toBe(true);
    expect(isMissing("dial gauge on a stand", ["dial gauge"])).toBe(true);
    expect(isMissing("torch", ["dial gauge"])).toBe(false);
  });

  it("leaves out the checks that need one", () => {
    const checks = [
      { id: "a", tools: [] },
      { id: "b", tools: ["torch", "pry bar"] },
    ];
    expect(withoutTools(checks, ["pry bar"])).toEqual(["b"]);
    expect(withoutTools(checks, [])).toEqual([]);
  });
});

describe("the form of turning parts", () => {
  it("comes back from what was kept in the case, in either unit", () => {
    const fields = { tyre: "205/55R16", finalDrive: "3.7", speed: "60", hz0: "14.3", hz1: "9", speed1: "40" };
    for (const units of [KM, MILES]) {
      const { turning, problems } = readTurning(fields, units);
      expect(problems).toEqual({});
      expect(fieldsOfTurning(turning, units)).toEqual(fields);
    }
    // A mile is 1.609344 km exactly (international yard and pound agreement, 1959).
    expect(readTurning(fields, MILES).request?.speedKmh).toBeCloseTo(60 * 1.609344, 9);
  });

  it("says what is missing, and what cannot be beside its field", () => {
    expect(readTurning({}, KM).needs).toBe("Give the tyre size and the speed.");
    const { problems, request } = readTurning(
      { tyre: "205/55R16", circumference: "1930", speed: "fast", cylinders: "4.5" },
      KM,
    );
    expect(request).toBeUndefined();
    expect(Object.keys(problems).sort()).toEqual(["circumference", "cylinders", "speed"]);
  });
});

it("takes odd drafts as empty forms", () => {
  for (const draft of ["", "{", "null", "3"]) expect(fieldsOfDraft(draft)).toEqual({});
  expect(fieldsOfDraft('{"a":"1","b":2}')).toEqual({ a: "1" });
});
