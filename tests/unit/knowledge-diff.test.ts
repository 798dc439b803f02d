import { expect, test } from "vitest";
import { diffKnowledge, isEmptyDiff } from "../../lib/knowledge/diff.ts";
import { patch, tinyKnowledge } from "../support/tiny-knowledge.ts";

test("a version does not differ from itself", () => {
  const diff = diffKnowledge(tinyKnowledge().knowledge, tinyKnowledge().knowledge);
  expect(isEmptyDiff(diff)).toBe(true);
  expect(diff.weights).toEqual([]);
});

test("ids added, changed and retired are told by kind, and turn round with the direction", () => {
  const a = tinyKnowledge().knowledge;
  const b = tinyKnowledge((records) => {
    delete records["faults/bar-link-worn.json"];
    delete records["demo-cases/first.json"];
    delete records["worked-cases/knock.json"];
    records["faults/rack-loose.json"] = {
      ...records["faults/rack-worn.json"],
      id: "rack-loose",
      name: "loose",
    };
    patch(records, "parts/rack.json", { about: "Steers the wheels." });
    patch(records, "reports.json", { reliability: 0.8 });
  }).knowledge;
  const there = diffKnowledge(a, b);
  expect(there.records.faults).toEqual({ added: ["rack-loose"], changed: [], retired: ["bar-link-worn"] });
  expect(there.records.parts).toEqual({ added: [], changed: ["rack"], retired: [] });
  expect(there.files).toEqual(["reports"]);
  expect(isEmptyDiff(there)).toBe(false);
  const back = diffKnowledge(b, a);
  expect(back.records.faults).toEqual({ added: ["bar-link-worn"], changed: [], retired: ["rack-loose"] });
});

test("a file that only one side has is told as changed", () => {
  const { knowledge } = tinyKnowledge();
  const { publishedShares: _, ...without } = knowledge;
  expect(diffKnowledge(without, knowledge).files).toEqual(["publishedShares"]);
  expect(diffKnowledge(knowledge, without).files).toEqual(["publishedShares"]);
  expect(isEmptyDiff(diffKnowledge(without, without))).toBe(true);
});

test("each probability that moved is told as a difference of natural log-odds", () => {
  const a = tinyKnowledge().knowledge;
  const b = tinyKnowledge((records) => {
    patch(records, "faults/rack-worn.json", { links: { "rack-play": { s: 0.5, basis: "annex" } } });
    patch(records, "faults/ball-joint-worn.json", { life: { share: 0.06 } });
    patch(records, "faults/bar-link-worn.json", { contexts: { "kerb-strike": 3 } });
    patch(records, "complaints/noise.json", { leak: 0.04 });
  }).knowledge;
  const { weights } = diffKnowledge(a, b);
  const moved = new Map(weights.map((change) => [change.weight, change.logOddsDelta]));
  // By hand: ln(odds after / odds before).
  expect(moved.get("faults/rack-worn links.rack-play.0")).toBeCloseTo(Math.log(1 / 4), 10);
  expect(moved.get("faults/ball-joint-worn share")).toBeCloseTo(Math.log(0.06 / 0.94 / (0.03 / 0.97)), 10);
  expect(moved.get("faults/bar-link-worn contexts.kerb-strike")).toBeCloseTo(Math.log(2), 10);
  expect(moved.get("complaints/noise leak")).toBeCloseTo(Math.log(0.04 / 0.96 / (0.02 / 0.98)), 10);
  expect(moved.size).toBe(4);
  const sizes = weights.map((change) => Math.abs(change.logOddsDelta));
  expect(sizes).toEqual([...sizes].sort((x, y) => y - x));
});

test("a changed wear life shows through the priors that the caller works out", () => {
  const a = tinyKnowledge().knowledge;
  const b = tinyKnowledge((records) =>
    patch(records, "faults/rack-worn.json", { life: { years: 10, shape: 2 } }),
  ).knowledge;
  const priors = (knowledge: typeof a) => new Map([["rack-worn", knowledge === a ? 0.1 : 0.5]]);
  const { weights } = diffKnowledge(a, b, priors);
  expect(weights).toHaveLength(1);
  expect(weights[0]).toMatchObject({ weight: "faults/rack-worn prior", from: 0.1, to: 0.5 });
  expect(weights[0]?.logOddsDelta).toBeCloseTo(Math.log(9), 10);
});
