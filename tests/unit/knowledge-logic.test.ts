import jsonLogic from "json-logic-js";
import { expect, test } from "vitest";
import { CornerwiseError } from "../../lib/errors.ts";
import {
  checkLogic,
  evaluateLogic,
  LOGIC_DEPTH,
  LOGIC_NODES,
  LOGIC_OPERATORS,
} from "../../lib/knowledge/logic.ts";

const CAR = {
  drive: "front",
  front: { layout: "strut" },
  odometerKm: 130000,
  place: { axle: "front", side: "left" },
};

function codeOf(run: () => unknown): string {
  try {
    run();
  } catch (error) {
    return error instanceof CornerwiseError ? error.code : String(error);
  }
  return "nothing thrown";
}

/** Each rule with what jsonlogic.com says of its operators, worked out by hand for CAR. */
const RULES: [unknown, boolean][] = [
  [{ "==": [{ var: "front.layout" }, "strut"] }, true],
  [{ "!=": [{ var: "front.layout" }, "strut"] }, false],
  [{ "!": [{ var: "steering" }] }, true],
  [{ "!": { var: "drive" } }, false],
  [{ "!!": { var: "drive" } }, true],
  [{ and: [{ "==": [{ var: "drive" }, "front"] }, { ">": [{ var: "odometerKm" }, 100000] }] }, true],
  [{ or: [{ "==": [{ var: "drive" }, "rear"] }, { "<": [{ var: "odometerKm" }, 100000] }] }, false],
  [{ in: [{ var: "drive" }, ["front", "all"]] }, true],
  [{ in: [{ var: "drive" }, ["rear", "all"]] }, false],
  [{ "<=": [130000, { var: "odometerKm" }] }, true],
  [{ ">=": [{ var: "odometerKm" }, 130001] }, false],
  [{ "<": [100000, { var: "odometerKm" }, 150000] }, true],
  [
    {
      if: [
        { "==": [{ var: "drive" }, "rear"] },
        false,
        { "==": [{ var: "place.axle" }, "front"] },
        true,
        false,
      ],
    },
    true,
  ],
  [{ missing: ["drive", "steering"] }, true],
  [{ missing: "drive" }, false],
  [{ "!": { missing: ["drive"] } }, true],
  [{ "==": [{ var: ["steering", "none"] }, "none"] }, true],
  [true, true],
  [false, false],
];

test("every operator allowed is evaluated as JsonLogic defines it", () => {
  const seen = new Set(
    RULES.flatMap(([rule]) => [...JSON.stringify(rule).matchAll(/"([^"]+)":/g)].map((m) => m[1])),
  );
  expect([...LOGIC_OPERATORS].filter((operator) => !seen.has(operator))).toEqual([]);
  for (const [rule, expected] of RULES) {
    expect(evaluateLogic(rule, CAR), JSON.stringify(rule)).toBe(expected);
    // The general-purpose interpreter, given the data itself, agrees.
    const general = jsonLogic.truthy(jsonLogic.apply(rule as jsonLogic.RulesLogic, CAR));
    expect(general, JSON.stringify(rule)).toBe(expected);
  }
});

test("the paths that a rule reads are told", () => {
  const rule = {
    and: [{ "==": [{ var: "drive" }, "front"] }, { "!": { missing: ["front.layout", "drive"] } }],
  };
  expect(checkLogic(rule).sort()).toEqual(["drive", "front.layout"]);
});

test("only own properties of the data are read", () => {
  expect(evaluateLogic({ var: "constructor" }, {})).toBe(false);
  expect(evaluateLogic({ var: "toString" }, {})).toBe(false);
  expect(evaluateLogic({ var: "drive.length" }, { drive: "front" })).toBe(false);
  expect(evaluateLogic({ var: "constructor" }, JSON.parse('{"constructor": true}'))).toBe(true);
  expect(evaluateLogic({ var: "drive" }, Object.create({ drive: "front" }))).toBe(false);
  expect(evaluateLogic({ missing: ["hasOwnProperty"] }, {})).toBe(true);
});

test("data cannot smuggle a rule in", () => {
  expect(evaluateLogic({ var: "drive" }, { drive: { "==": [1, 1] } })).toBe(false);
});

test("rules that are not allowed are refused", () => {
  const refused: unknown[] = [
    { method: [{ var: "drive" }, "toString"] },
    { log: "x" },
    { map: [{ var: "drive" }, true] },
    { "+": [1, 2] },
    { var: "__proto__" },
    { var: "front.__proto__.polluted" },
    { var: "" },
    { var: 0 },
    { var: [] },
    { var: { var: "drive" } },
    { var: ["drive", { "==": [1, 1] }] },
    JSON.parse('{"__proto__": [1]}'),
    { "==": [1, 1], "!=": [1, 1] },
    {},
    { "==": [Number.NaN, 1] },
    { missing: [] },
    undefined,
    () => true,
  ];
  for (const rule of refused)
    expect(
      codeOf(() => evaluateLogic(rule, CAR)),
      JSON.stringify(rule),
    ).toBe("bad-logic");
});

test("a rule that is too deep or too long is refused, also one far too deep", () => {
  const nest = (depth: number): unknown => {
    let rule: unknown = true;
    for (let i = 0; i < depth; i += 1) rule = { "!": rule };
    return rule;
  };
  expect(evaluateLogic(nest(LOGIC_DEPTH), CAR)).toBe(true);
  expect(codeOf(() => checkLogic(nest(LOGIC_DEPTH + 1)))).toBe("bad-logic");
  expect(codeOf(() => checkLogic(nest(50_000)))).toBe("bad-logic");
  expect(codeOf(() => checkLogic({ or: Array.from({ length: LOGIC_NODES }, () => true) }))).toBe("bad-logic");
  expect(codeOf(() => checkLogic({ missing: Array.from({ length: LOGIC_NODES + 1 }, () => "drive") }))).toBe(
    "bad-logic",
  );
});
