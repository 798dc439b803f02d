import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Answer, groundCar, weigh } from "../../lib/engine/index.ts";
import {
  checkResult,
  drawCar,
  firedSuspects,
  gradeFound,
  perturbedKnowledge,
  questionResult,
  type SimulatedCar,
} from "../../lib/engine/simulate/index.ts";
import { hashedUniform } from "../../lib/maths/hashed-uniform.ts";
import { seededUniform } from "../../lib/maths/seeded-uniform.ts";
import { standardNormal } from "../../lib/maths/standard-normal.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";
import { tinyKnowledge } from "../support/tiny-knowledge.ts";

/*
 * Chances expected here are worked out by enumeration or plain formulas of noisy-OR and noisy-max over the tiny, invented
 * knowledge. Critical values of chi-square at 0.001, from memory of the usual tables: 1 degree 10.83, 2 13.82, 9 27.88.
 * Seeds are fixed, so that the tests cannot fail by chance.
 */
const { knowledge } = tinyKnowledge();
const grounded = groundCar(knowledge, { front: { layout: "strut" }, odometerKm: 130_000, ageYears: 10 });
const CHI_SQUARE: Readonly<Record<number, number>> = { 1: 10.83, 2: 13.82, 9: 27.88 };

function chiSquare(counts: readonly number[], chances: readonly number[]): number {
  const total = counts.reduce((sum, c) => sum + c, 0);
  return counts.reduce((sum, c, k) => sum + (c - total * chances[k]!) ** 2 / (total * chances[k]!), 0);
}

function draws(count: number, seed: number, options = {}): SimulatedCar[] {
  const uniform = seededUniform(seed);
  return Array.from({ length: count }, () => drawCar(grounded, uniform, options));
}

describe("numbers that a seed fixes", () => {
  test("both generators fill tenths evenly, and a hash does so over near texts and near seeds", () => {
    const uniform = seededUniform(5);
    const sources = [
      Array.from({ length: 20_000 }, () => uniform()),
      Array.from({ length: 20_000 }, (_, k) => hashedUniform(9, `finding-${k}@front-left`)),
      Array.from({ length: 20_000 }, (_, k) => hashedUniform(k, "finding@front-left")),
    ];
    for (const numbers of sources) {
      const counts = new Array<number>(10).fill(0);
      for (const u of numbers) counts[Math.floor(10 * u)]! += 1;
      expect(chiSquare(counts, new Array<number>(10).fill(0.1))).toBeLessThan(CHI_SQUARE[9]!);
    }
  });

  test("the normal draws have mean 0 and variance 1, and 4.55 % lie beyond two", () => {
    const uniform = seededUniform(6);
    const drawn = Array.from({ length: 40_000 }, () => standardNormal(uniform));
    const mean = drawn.reduce((a, b) => a + b, 0) / drawn.length;
    expect(Math.abs(mean)).toBeLessThan(0.02);
    expect(drawn.reduce((sum, z) => sum + (z - mean) ** 2, 0) / drawn.length).toBeCloseTo(1, 1);
    const beyond = drawn.filter((z) => Math.abs(z) > 2).length;
    expect(chiSquare([beyond, drawn.length - beyond], [0.0455, 0.9545])).toBeLessThan(CHI_SQUARE[1]!);
  });
});

describe("cars follow the model", () => {
  test("given the complaint, each suspect is there as often as weighing says", () => {
    const cars = draws(20_000, 1, { told: 0 });
    const { ranking } = weigh(grounded, [{ finding: "noise", state: "present", by: "report" }]);
    for (const { suspect, present, explains } of ranking) {
      const there = cars.filter((c) => c.present[suspect.index] === 1).length;
      expect(chiSquare([there, cars.length - there], [present, 1 - present])).toBeLessThan(CHI_SQUARE[1]!);
      const fired = cars.filter((c) => firedSuspects(c).includes(suspect.index)).length;
      expect(chiSquare([fired, cars.length - fired], [explains, 1 - explains])).toBeLessThan(CHI_SQUARE[1]!);
    }
  });

  test("a told feature is as the fault that is heard shows it, as often as told features are heeded", () => {
    const index = grounded.suspectIndex.get("bar-link-worn@front-left") ?? -1;
    const cars = draws(20_000, 2, { suspect: index, told: 0 }).filter((c) => c.heard?.suspect === index);
    const yes = cars.filter((c) => questionResult(c, "noise:small-bumps").state === "present").length;
    // Profile: usually, 0.75; background 0.3; told features count 0.8.
    const chance = 0.8 * 0.75 + 0.2 * 0.3;
    expect(chiSquare([yes, cars.length - yes], [chance, 1 - chance])).toBeLessThan(CHI_SQUARE[1]!);
  });

  test("a graded finding follows the noisy-max of who is there and the leak", () => {
    const node = grounded.nodes.get("joint-play@front-left");
    const index = grounded.suspectIndex.get("ball-joint-worn@front-left") ?? -1;
    for (const there of [true, false]) {
      const cars = draws(30_000, 3, there ? { suspect: index, told: 0 } : { told: 0 }).filter(
        (c) => (c.present[index] === 1) === there,
      );
      const counts = [0, 0, 0];
      for (const car of cars) counts[gradeFound(car, "joint-play@front-left") + 1]! += 1;
      // Levels: usually 0.75, often 0.6; leak 0.02 and 0.002.
      const below = (s: number, leak: number): number => (1 - (there ? s : 0)) * (1 - leak);
      const none = below(0.75, 0.02);
      const slight = below(0.6, 0.002) - none;
      expect(node?.parents).toEqual(Int32Array.of(index));
      expect(chiSquare(counts, [none, slight, 1 - none - slight])).toBeLessThan(CHI_SQUARE[2]!);
    }
  });

  test("a car that starts from a suspect has it, and it fired on the complaint", () => {
    for (const suspect of grounded.suspects) {
      for (const car of draws(20, 4, { suspect: suspect.index })) {
        expect(car.present[suspect.index]).toBe(1);
        expect(firedSuspects(car)).toContain(suspect.index);
      }
    }
  });
});

describe("asking again", () => {
  const shipped = groundCar(shippedKnowledge(), { drive: "front", odometerKm: 140_000 });
  const nodes = [...shipped.nodes.values()];

  test("any finding is the same when repeated and in any order; the same seed draws the same car", () => {
    fc.assert(
      fc.property(
        fc.integer(),
        fc.uniqueArray(fc.constantFrom(...nodes), { minLength: 2, maxLength: 12, selector: (n) => n.id }),
        (seed, asked) => {
          const car = drawCar(shipped, seededUniform(seed));
          const again = drawCar(shipped, seededUniform(seed));
          expect(again.told).toEqual(car.told);
          expect(again.present).toEqual(car.present);
          const result = (of: SimulatedCar, node: (typeof nodes)[number]): Answer[] =>
            checkResult(of, [{ finding: node.id, levels: node.observation.levels }]);
          const forwards = asked.map((n) => result(car, n));
          const backwards = asked
            .toReversed()
            .map((n) => result(again, n))
            .toReversed();
          expect(backwards).toEqual(forwards);
          for (const answers of forwards) expect(() => weigh(shipped, answers)).not.toThrow();
        },
      ),
      { numRuns: 60 },
    );
  });

  test("the owner's answers are the same when asked again, and told ones are what asking would give", () => {
    fc.assert(
      fc.property(fc.integer(), (seed) => {
        const car = drawCar(shipped, seededUniform(seed), { told: 6 });
        const able = shipped.knowledge.features.filter((f) => f.complaints.includes(car.complaint.id)).length;
        expect(car.told).toHaveLength(1 + Math.min(6, able));
        for (const told of car.told) expect(questionResult(car, told.finding)).toEqual(told);
      }),
      { numRuns: 60 },
    );
  });
});

test("a moved world stays a knowledge: chances within 0..1, grades falling, the log-odds spread as stated", () => {
  const uniform = seededUniform(8);
  const shifts: number[] = [];
  for (let world = 0; world < 300; world++) {
    const moved = perturbedKnowledge(knowledge, uniform);
    moved.faults.forEach((fault, f) => {
      fault.links.forEach((link, l) => {
        const [first, second] = link.levels;
        expect(first?.p).toBeGreaterThan(0);
        expect(first?.p).toBeLessThan(1);
        if (second !== undefined) expect(second.p).toBeLessThanOrEqual(first?.p ?? 0);
        const before = knowledge.faults[f]?.links[l]?.levels[0];
        const logit = (p: number): number => Math.log(p / (1 - p));
        shifts.push((logit(first?.p ?? 0.5) - logit(before?.p ?? 0.5)) / (before?.spread ?? 1));
      });
    });
  }
  const mean = shifts.reduce((a, b) => a + b, 0) / shifts.length;
  const variance = shifts.reduce((sum, z) => sum + (z - mean) ** 2, 0) / shifts.length;
  expect(Math.abs(mean)).toBeLessThan(0.1);
  expect(variance).toBeCloseTo(1, 0);
});

test("what cannot be drawn is a coded error", () => {
  const uniform = seededUniform(1);
  expect(() => drawCar(grounded, uniform, { complaint: "no-such" })).toThrowError(
    expect.objectContaining({ code: "unknown-id" }),
  );
  expect(() => drawCar(grounded, uniform, { suspect: 10_000 })).toThrowError(
    expect.objectContaining({ code: "impossible-evidence" }),
  );
});
