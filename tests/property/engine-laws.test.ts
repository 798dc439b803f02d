import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  type Answer,
  groundCar,
  proposeChecks,
  weigh,
  weighing,
  whySuspect,
} from "../../lib/engine/index.ts";
import { answersOf, anyCar } from "../support/random-answers.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";

const knowledge = shippedKnowledge();
const answers = answersOf(knowledge, 8);
const RUNS = { numRuns: 60, seed: 20261125 };

/** Every suspect's chances by id. */
function chances(
  car: Record<string, unknown>,
  given: readonly Answer[],
): Map<string, readonly [number, number]> {
  const { ranking } = weigh(groundCar(knowledge, car), given);
  return new Map(ranking.map((r) => [r.suspect.id, [r.explains, r.present] as const]));
}

const MIRRORED: Readonly<Record<string, string>> = Object.fromEntries([
  ...knowledge.places.places.flatMap((p) => {
    const other = knowledge.places.places.find(
      (o) => o.axle === p.axle && o.side !== "none" && p.side !== "none" && o.side !== p.side,
    );
    return other === undefined ? [] : [[p.id, other.id]];
  }),
  ...knowledge.features.flatMap((f) => (f.mirror === undefined ? [] : [[f.id, f.mirror]])),
]);

/** The finding as it would be called if left and right were swapped. */
function mirror(finding: string): string {
  return finding
    .split(/([@:])/)
    .map((piece) => MIRRORED[piece] ?? piece)
    .join("");
}

describe("laws of weighing on the shipped knowledge", () => {
  test("every chance lies in 0..1 and none is NaN, whatever is answered about whatever car", () => {
    fc.assert(
      fc.property(anyCar, answers, (car, given) => {
        const weighed = weigh(groundCar(knowledge, car), given);
        const all = [
          weighed.notInKnowledge,
          weighed.otherCombinations,
          ...weighed.ranking.flatMap((r) => [r.explains, r.present]),
        ];
        expect(all.every((p) => p >= 0 && p <= 1)).toBe(true);
        expect(Number.isFinite(weighed.logEvidence)).toBe(true);
      }),
      RUNS,
    );
  });

  test("what explains is never likelier than what is there", () => {
    fc.assert(
      fc.property(anyCar, answers, (car, given) => {
        for (const r of weigh(groundCar(knowledge, car), given).ranking) {
          expect(r.explains).toBeLessThanOrEqual(r.present + 1e-9);
        }
      }),
      RUNS,
    );
  });

  test("the order of answers is irrelevant", () => {
    fc.assert(
      fc.property(anyCar, answers, fc.integer(), (car, given, seed) => {
        const shuffled = given
          .map((a, i) => ({ a, key: Math.sin(seed + i * 7919) }))
          .sort((x, y) => x.key - y.key)
          .map((x) => x.a);
        expect(chances(car, shuffled)).toEqual(chances(car, given));
      }),
      RUNS,
    );
  });

  test("an answer of not known changes nothing, to the last bit", () => {
    fc.assert(
      fc.property(anyCar, answers, (car, given) => {
        const answered = new Set(given.map((a) => a.finding));
        const open = knowledge.observations
          .map((o) => `${o.id}@${o.places[0]}`)
          .filter((id) => !answered.has(id));
        const unknown = open
          .slice(0, 5)
          .map((finding): Answer => ({ finding, state: "unknown", by: "check" }));
        expect(unknown).toHaveLength(5);
        expect(chances(car, [...given, ...unknown])).toEqual(chances(car, given));
      }),
      RUNS,
    );
  });

  test("weighing twice gives the same bits: nothing is kept between calls", () => {
    fc.assert(
      fc.property(answers, answers, (given, other) => {
        const grounded = groundCar(knowledge, {});
        const first = weigh(grounded, given);
        weigh(grounded, [...given, ...other]);
        expect(weigh(grounded, given)).toEqual(first);
      }),
      RUNS,
    );
  });

  test("swapping left and right in the answers mirrors the ranking", () => {
    expect(MIRRORED["front-left"]).toBe("front-right");
    fc.assert(
      fc.property(anyCar, answers, (car, given) => {
        const plain = chances(car, given);
        const swapped = chances(
          car,
          given.map((a) => ({ ...a, finding: mirror(a.finding) })),
        );
        for (const [id, [explains, present]] of plain) {
          const [otherExplains, otherPresent] = swapped.get(mirror(id)) ?? [Number.NaN, Number.NaN];
          expect(Math.abs(explains - otherExplains)).toBeLessThan(1e-6);
          expect(Math.abs(present - otherPresent)).toBeLessThan(1e-6);
        }
      }),
      RUNS,
    );
  });

  test("an observation on its own never lowers a suspect that gives it, however it is graded", () => {
    const grounded = groundCar(knowledge, {});
    let looked = 0;
    for (const node of [...grounded.nodes.values()].filter((_, k) => k % 7 === 0)) {
      const { ranking } = weigh(grounded, [{ finding: node.id, state: "present", by: "check" }]);
      for (const r of ranking) {
        if (!node.parents.includes(r.suspect.index)) continue;
        looked += 1;
        expect(r.present).toBeGreaterThanOrEqual(r.suspect.prior - 1e-12);
      }
    }
    expect(looked).toBeGreaterThan(50);
  });

  test("total probability: a check's results, weighted by their chances, give back the chance before it", () => {
    const grounded = groundCar(knowledge, { drive: "front" });
    const given: Answer[] = [{ finding: "noise:small-bumps", state: "present", by: "report" }];
    const before = weigh(grounded, given);
    const node = [...grounded.nodes.values()].find(
      (n) => n.observation.levels.length === 1 && n.place === "front-left",
    );
    expect(node).toBeDefined();
    if (node === undefined) return;
    const results = (["present", "absent"] as const).map((state) =>
      weigh(grounded, [...given, { finding: node.id, state, by: "check" }]),
    );
    const shares = results.map((r) => Math.exp(r.logEvidence - before.logEvidence));
    expect(shares.reduce((sum, p) => sum + p, 0)).toBeCloseTo(1, 9);
    for (const { suspect, present } of before.ranking) {
      const mixed = results.reduce(
        (sum, r, k) =>
          sum + (shares[k] ?? 0) * (r.ranking.find((x) => x.suspect.id === suspect.id)?.present ?? 0),
        0,
      );
      expect(Math.abs(mixed - present)).toBeLessThan(1e-9);
    }
  });

  test("the next checks come best first, gain is never negative, and nothing settled by hand is asked again", () => {
    fc.assert(
      fc.property(anyCar, answers, (car, given) => {
        const grounded = groundCar(knowledge, car);
        const proposed = proposeChecks(grounded, given, weighing(grounded, given));
        const done = new Set(given.filter((a) => a.by === "check").map((a) => a.finding));
        proposed.forEach((p, k) => {
          expect(p.gainBits).toBeGreaterThan(0);
          expect(p.score).toBeLessThanOrEqual(proposed[k - 1]?.score ?? Number.POSITIVE_INFINITY);
          if (p.kind === "check") expect(p.settles.every((s) => !done.has(s.finding))).toBe(true);
        });
      }),
      { ...RUNS, numRuns: 30 },
    );
  });

  test("why lists every answer once, and leaving an answer out is what it says", () => {
    const given: Answer[] = [
      { finding: "noise", state: "present", by: "report" },
      { finding: "noise:small-bumps", state: "present", by: "report" },
      { finding: "shake", state: "absent", by: "report" },
    ];
    const grounded = groundCar(knowledge, {});
    const leader = weigh(grounded, given).ranking[0]?.suspect.id ?? "";
    const why = whySuspect(grounded, given, leader);
    expect(why.answers.map((a) => a.finding).sort()).toEqual(given.map((a) => a.finding).sort());
    const logit = (p: number): number => Math.log(p / (1 - p));
    const without =
      weigh(grounded, given.slice(0, 2)).ranking.find((r) => r.suspect.id === leader)?.present ?? 0;
    const shake = why.answers.find((a) => a.finding === "shake")?.ifTakenBack ?? Number.NaN;
    expect(shake).toBeCloseTo(logit(why.present) - logit(without), 9);
  });
});
