import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { groundCar, weigh } from "../../lib/engine/index.ts";
import { trusted } from "../../lib/engine/complaint-bit.ts";
import { featureChance } from "../../lib/engine/feature-chance.ts";
import { answersOf, anyCar } from "../support/random-answers.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";

/* That told findings weigh less than checked ones is common practice, no source; how much less is in reports.json. */

const knowledge = shippedKnowledge();
const grounded = groundCar(knowledge, {});
const { reports, features } = knowledge;

test("a told finding moves its likeliest cause less than the same finding by hand, found or not found", () => {
  const nodes = [...grounded.nodes.values()].filter((n) => n.observation.levels.length === 1);
  fc.assert(
    fc.property(fc.constantFrom(...nodes), fc.constantFrom("present", "absent"), (node, state) => {
      const strengths = [...(node.strengths[0] ?? [])];
      const strongest = strengths.indexOf(Math.max(...strengths));
      const suspect = node.parents[strongest] ?? 0;
      const chance = (by: "report" | "check"): number => {
        const { ranking } = weigh(grounded, [{ finding: node.id, state, by }]);
        return ranking.find((r) => r.suspect.index === suspect)?.present ?? 0;
      };
      const prior = grounded.prior[suspect] ?? 0;
      const moved = (p: number): number => Math.abs(Math.log(p / (1 - p)) - Math.log(prior / (1 - prior)));
      expect(moved(chance("report"))).toBeLessThan(moved(chance("check")));
    }),
    { numRuns: 40, seed: 20261128 },
  );
});

test("to say that one does not know changes nothing", () => {
  fc.assert(
    fc.property(anyCar, answersOf(knowledge, 4), fc.constantFrom(...features), (car, given, feature) => {
      const here = groundCar(knowledge, car);
      const [complaint = ""] = feature.complaints;
      const finding = `${complaint}:${feature.id}`;
      fc.pre(!given.some((a) => a.finding === finding));
      const open = weigh(here, [...given, { finding, state: "unknown", by: "report" }]);
      expect(open.ranking).toEqual(weigh(here, given).ranking);
    }),
    { numRuns: 10, seed: 20261128 },
  );
});

describe("where it seems to come from", () => {
  /** Most that the told feature can set one cause above another, as a natural log; the background is a cause too. */
  const most = features.map((feature) => {
    const chances = knowledge.faults.flatMap((fault) =>
      fault.shows
        .filter((s) => feature.complaints.includes(s.complaint))
        .flatMap((s) =>
          knowledge.places.places.map((p) =>
            trusted(grounded, feature, featureChance(feature, s, p), "report"),
          ),
        ),
    );
    return { feature, log: Math.log(Math.max(...chances) / Math.min(...chances)) };
  });
  const of = (id: string): number => most.find((m) => m.feature.id === id)?.log ?? Number.NaN;

  test("a told side weighs least of all that is told of a complaint", () => {
    const least = most.toSorted((a, b) => a.log - b.log).slice(0, 2);
    expect(least.map((m) => m.feature.id).toSorted()).toEqual(["from-left", "from-right"]);
  });

  test("where it is told to come from weighs less than any told moment", () => {
    const moments = most.filter((m) => m.feature.kind === "moment").map((m) => m.log);
    for (const id of features.filter((f) => f.kind === "where").map((f) => f.id)) {
      expect(of(id), id).toBeLessThan(Math.min(...moments));
    }
  });

  test("what is told is only in part as told: it never weighs as the same feature by hand", () => {
    expect(reports.features).toBeLessThan(1);
    for (const feature of features.filter((f) => f.kind === "where")) {
      const { background } = feature;
      for (const chance of [0.05, 0.7]) {
        const told = trusted(grounded, feature, chance, "report");
        expect(Math.abs(Math.log(told / background))).toBeLessThan(Math.abs(Math.log(chance / background)));
      }
    }
  });
});
