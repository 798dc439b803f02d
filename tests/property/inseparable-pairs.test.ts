import fc from "fast-check";
import { expect, test } from "vitest";
import { inseparablePairs } from "../../lib/knowledge/health/inseparable-pairs.ts";
import type { Knowledge } from "../../lib/knowledge/schema/compiled.ts";
import { patch, tinyKnowledge } from "../support/tiny-knowledge.ts";

/** Strengths of the links of three faults of the ball joint and one of the bar link; undefined: no such link. */
const chance = fc.double({ min: 0.001, max: 0.999, noNaN: true });
const strengths = fc.record({
  link: fc.option(chance, { nil: undefined }),
  slight: chance,
  share: chance,
  rack: fc.option(chance, { nil: undefined }),
});
type Strengths = typeof strengths extends fc.Arbitrary<infer T> ? T : never;

function linksOf({ link, slight, share, rack }: Strengths): Record<string, unknown> {
  return {
    ...(link === undefined ? {} : { "link-play": link }),
    "joint-play": { levels: [slight, slight * share] },
    ...(rack === undefined ? {} : { "rack-play": rack }),
  };
}

/** The tiny knowledge with further faults of the ball joint, all without rules for cars. */
function withFaults(faults: readonly Strengths[], names: readonly string[]): Knowledge {
  return tinyKnowledge((records) => {
    patch(records, "parts/bar-link.json", { when: undefined });
    faults.forEach((each, i) => {
      const id = `joint-${names[i]}`;
      records[`faults/${id}.json`] = {
        ...records["faults/ball-joint-worn.json"],
        id,
        name: id,
        links: linksOf(each),
        decisive: [],
      };
    });
  }).knowledge;
}

const NAMES = ["a", "b", "c"];
const three = fc.tuple(strengths, strengths, strengths);
const ofJoint = (pairs: ReturnType<typeof inseparablePairs>) =>
  pairs.filter(({ faults }) => faults.every((id) => /^joint-[abc]$/.test(id)));

/**
 * Brute force for two faults of the ball joint at one corner: the greatest ratio, either way, of the chance of any result of
 * any check. Every observation of the tiny knowledge has a check, and leaks at its own corner only matter.
 */
function bruteFactor(knowledge: Knowledge, a: Strengths, b: Strengths): number {
  const leakOf = (id: string) => knowledge.observations.find((o) => o.id === id)?.leak ?? [];
  const rows: [number, number, number][] = [
    [leakOf("link-play")[0] ?? 0, a.link ?? 0, b.link ?? 0],
    [leakOf("joint-play")[0] ?? 0, a.slight, b.slight],
    [leakOf("joint-play")[1] ?? 0, a.slight * a.share, b.slight * b.share],
    [leakOf("rack-play")[0] ?? 0, a.rack ?? 0, b.rack ?? 0],
  ];
  let greatest = 1;
  for (const [leak, p, q] of rows) {
    const none = [(1 - leak) * (1 - p), (1 - leak) * (1 - q)] as const;
    for (const [x, y] of [none, [1 - none[0], 1 - none[1]] as const])
      greatest = Math.max(greatest, x / y, y / x);
  }
  return greatest;
}

test("the pairs are those whose greatest likelihood ratio, by brute force, is below the tolerance", () => {
  fc.assert(
    fc.property(three, fc.double({ min: 1.1, max: 50, noNaN: true }), (faults, tolerance) => {
      const knowledge = withFaults(faults, NAMES);
      const found = new Map(
        ofJoint(inseparablePairs(knowledge, tolerance)).map((pair) => [pair.faults.join(), pair.factor]),
      );
      for (const [i, j] of [
        [0, 1],
        [0, 2],
        [1, 2],
      ] as const) {
        const factor = bruteFactor(knowledge, faults[i], faults[j]);
        const key = `joint-${NAMES[i]},joint-${NAMES[j]}`;
        if (factor < tolerance * (1 - 1e-9)) expect(found.get(key)).toBeCloseTo(factor, 6);
        else if (factor > tolerance * (1 + 1e-9)) expect(found.has(key)).toBe(false);
      }
    }),
    { numRuns: 60 },
  );
});

test("a wider tolerance loses no pair, and the factor of a pair does not depend on it", () => {
  fc.assert(
    fc.property(three, fc.tuple(chance, chance), (faults, [x, y]) => {
      const [narrow, wide] = [1 + 9 * Math.min(x, y), 1.01 + 9 * Math.max(x, y)];
      const knowledge = withFaults(faults, NAMES);
      const found = inseparablePairs(knowledge, wide);
      for (const pair of inseparablePairs(knowledge, narrow)) expect(found).toContainEqual(pair);
    }),
    { numRuns: 40 },
  );
});

test("it does not matter which record comes first", () => {
  fc.assert(
    fc.property(three, (faults) => {
      const there = ofJoint(inseparablePairs(withFaults(faults, NAMES), 10));
      const renamed = ofJoint(inseparablePairs(withFaults([...faults].reverse(), NAMES), 10));
      const factors = (pairs: typeof there) => pairs.map(({ factor }) => factor.toPrecision(9)).sort();
      expect(factors(renamed)).toEqual(factors(there));
    }),
    { numRuns: 40 },
  );
});

test("a fault and its twin are the same within any tolerance, until the twin gives something of its own", () => {
  fc.assert(
    fc.property(strengths, (each) => {
      const alike = { ...each, rack: undefined };
      const twins = (own: Strengths) =>
        ofJoint(inseparablePairs(withFaults([alike, own], NAMES), 1.0001)).map(({ factor }) => factor);
      expect(twins(alike)).toEqual([1]);
      // The rack's play has a leak of 0.003, so half the time is far more.
      expect(twins({ ...alike, rack: 0.5 })).toEqual([]);
    }),
    { numRuns: 40 },
  );
});
