import { describe, expect, test } from "vitest";
import { groundCar, placedChecks, type Suspect } from "../../lib/engine/index.ts";
import type { Knowledge } from "../../lib/knowledge/schema/compiled.ts";
import { seededUniform } from "../../lib/maths/seeded-uniform.ts";
import {
  type Exercise,
  drawSaid,
  exerciseResult,
  type ReadyExercise,
  readyExercise,
} from "../../lib/training/index.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";

/*
 * What checks and questions of an exercise find, over many seeds, against the chances of the knowledge by the plain formula of
 * noisy-OR: P(absent) = (1 - leak) x product over the hidden faults of (1 - strength) (Pearl 1988).
 *
 * Critical values of chi-square: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.4, upper 0.001: 149.449 with 100
 * degrees, 10.828 with 1. Single cells are held to 23.93, the square of 4.892, beyond which a normal number lies once in a
 * million (usual normal table): about 0.001 shared out over a thousand cells (Bonferroni). Seeds are fixed, so that nothing
 * fails by chance.
 */
const BY_HUNDRED = 149.449;
const ONE_DEGREE = 10.828;
const ONE_IN_A_MILLION = 23.93;
const SEEDS = 300;
/** Fewer than so many expected make chi-square a poor guide (the usual rule of five). */
const FEWEST = 5;

const knowledge = shippedKnowledge();
/** Known down to every pick, so that no part is only perhaps there. */
const car = {
  drive: "front",
  front: { layout: "strut" },
  rear: { layout: "twist-beam", brakes: "disc" },
  springs: "steel",
  steering: "rack-hydraulic",
  roads: "average",
  salt: "no",
  load: "light",
  trips: "usual",
  odometerKm: 130_000,
  ageYears: 10,
};
const grounded = groundCar(knowledge, car);
const suspects = grounded.suspects.filter((s) => s.exists === 1 && faultOf(s).shows.length > 0);

function faultOf({ fault }: Suspect): Knowledge["faults"][number] {
  const found = knowledge.faults.find((f) => f.id === fault);
  if (found === undefined) throw new Error(`no fault ${fault}`);
  return found;
}

function exerciseOf(hidden: readonly Suspect[], terms: Partial<Exercise["terms"]> = {}): Exercise {
  const [first] = hidden;
  return {
    format: "cornerwise-exercise",
    form: 1,
    id: "made-up",
    name: "Made up (invented)",
    about: "",
    release: knowledge.version,
    car,
    vehicle: "demo car (invented)",
    customer: "invented",
    lately: [],
    text: "",
    said: [
      { finding: first === undefined ? "" : (faultOf(first).shows[0]?.complaint ?? ""), state: "present" },
    ],
    terms: { lift: true, helper: true, missingTools: [], hints: true, ranking: true, ...terms },
    hidden: {
      seed: 0,
      faults: hidden.map(({ fault, place }, k) => ({ fault, place, causes: k === 0 })),
      results: [],
    },
  };
}

interface Cell {
  readonly what: string;
  readonly expected: number;
  readonly chiSquare: number;
}

/** How far the share of seeds with "at least this grade" is from its chance, for every grade of an observation. */
function cells(hidden: readonly Suspect[], ready: ReadyExercise, observation: string): Cell[] {
  const placed = placedChecks(grounded).find((p) =>
    p.nodes.some((n) => n.observation.id === observation && n.place === hidden[0]?.place),
  );
  const node = placed?.nodes.find((n) => n.observation.id === observation);
  if (placed === undefined || node === undefined) return [];
  const record = knowledge.observations.find((o) => o.id === observation);
  const counts = new Array<number>(record?.levels.length ?? 0).fill(0);
  for (let seed = 1; seed <= SEEDS; seed++) {
    const results = exerciseResult({ ...ready, car: { ...ready.car, seed: seed * 7919 } }, placed.id);
    const found = results.find((r) => r.finding === node.id);
    const grade = found?.state !== "present" ? -1 : (record?.levels.indexOf(found.level ?? "") ?? -1);
    // A plain yes has no grade.
    const reached = found?.state === "present" && grade < 0 ? 0 : grade;
    for (let level = 0; level <= reached; level++) counts[level]! += 1;
  }
  return counts.flatMap((count, level) => {
    const silent = hidden.reduce(
      (quiet, suspect) => {
        const link = faultOf(suspect).links.find((l) => l.observation === observation);
        return quiet * (1 - (link?.levels[level]?.p ?? 0));
      },
      1 - (record?.leak[level] ?? record?.leak[0] ?? 0),
    );
    const expected = SEEDS * (1 - silent);
    if (Math.min(expected, SEEDS - expected) < FEWEST) return [];
    const off = (count - expected) ** 2;
    return [
      {
        what: `${hidden.map((s) => s.id).join(" and ")}: ${node.id}, grade ${level}`,
        expected,
        chiSquare: off / expected + off / (SEEDS - expected),
      },
    ];
  });
}

function holdTo(all: readonly Cell[]): void {
  for (const { what, chiSquare } of all) expect(chiSquare, what).toBeLessThan(ONE_IN_A_MILLION);
  for (let from = 0; from + 100 <= all.length; from += 100) {
    const sum = all.slice(from, from + 100).reduce((s, c) => s + c.chiSquare, 0);
    expect(sum, `cells from ${from}: ${all[from]?.what}`).toBeLessThan(BY_HUNDRED);
  }
}

describe("results follow the model", () => {
  test("every fault by itself gives each of its observations as often as the knowledge says", () => {
    const seen = new Set<string>();
    const all: Cell[] = [];
    for (const suspect of suspects) {
      if (seen.has(suspect.fault)) continue;
      seen.add(suspect.fault);
      // The lowest grade only: grades of one result hang together, and sums of chi-square want independent ones.
      const ready = readyExercise(knowledge, exerciseOf([suspect]));
      for (const { observation } of faultOf(suspect).links)
        all.push(...cells([suspect], ready, observation).slice(0, 1));
    }
    expect(seen.size).toBeGreaterThan(150);
    expect(all.length).toBeGreaterThan(500);
    holdTo(all);
  });

  test("so do the higher grades, and two faults together where both give the same observation", () => {
    const all: Cell[] = [];
    for (const { id, levels } of knowledge.observations) {
      const givers = suspects.filter((s) => faultOf(s).links.some((l) => l.observation === id));
      const place = givers[0]?.place;
      const pair = givers.filter((s) => s.place === place).slice(0, 2);
      if (pair.length === 2 || (pair.length === 1 && levels.length > 1))
        all.push(...cells(pair, readyExercise(knowledge, exerciseOf(pair)), id));
    }
    expect(all.length).toBeGreaterThan(100);
    for (const { what, chiSquare } of all) expect(chiSquare, what).toBeLessThan(ONE_IN_A_MILLION);
  });

  test("the customer is as far to be trusted as the exercise says", () => {
    const suspect = suspects.find((s) => s.id === "anti-roll-bar-link-worn@front-left");
    if (suspect === undefined) throw new Error("the link is a suspect");
    const showing = faultOf(suspect).shows.toSorted((a, b) => b.strength.p - a.strength.p)[0];
    for (const unreliable of [0, 0.4, 1]) {
      const ready = readyExercise(knowledge, exerciseOf([suspect], { unreliable }));
      // Features that do not depend on the place, as the shipped knowledge lists them.
      for (const feature of ["small-bumps", "clunk", "braking", "hum"]) {
        const record = knowledge.features.find((f) => f.id === feature);
        const own = Math.min(Math.max(showing?.features[feature] ?? record?.unlisted ?? 0, 0.01), 0.98);
        const chance = (1 - unreliable) * own + unreliable * (record?.background ?? 0);
        let yes = 0;
        for (let seed = 1; seed <= 2000; seed++) {
          const [said] = exerciseResult({ ...ready, car: { ...ready.car, seed } }, `ask:noise:${feature}`);
          if (said?.state === "present") yes += 1;
        }
        const off = (yes - 2000 * chance) ** 2;
        const chiSquare = off / (2000 * chance) + off / (2000 * (1 - chance));
        expect(chiSquare, `${feature} at ${unreliable}`).toBeLessThan(ONE_DEGREE);
      }
    }
  });
});

describe("what a customer says by the model", () => {
  const link = suspects.find((s) => s.id === "anti-roll-bar-link-worn@front-left");
  if (link === undefined) throw new Error("the link is a suspect");
  const { said: _, text: __, ...exercise } = exerciseOf([link]);

  test("is the complaint first, then as many features as wanted, each once, as asking for them would give", () => {
    for (const told of [0, 3, 7]) {
      const said = drawSaid(knowledge, { exercise, complaint: "noise", told }, seededUniform(told));
      expect(said[0]).toEqual({ finding: "noise", state: "present" });
      expect(said).toHaveLength(1 + told);
      expect(new Set(said.map((s) => s.finding)).size).toBe(said.length);
      const ready = readyExercise(knowledge, { ...exercise, said, text: "" });
      for (const { finding, state } of said.slice(1))
        expect(exerciseResult(ready, `ask:${finding}`)).toMatchObject([{ finding, state }]);
    }
  });

  test("a complaint that the fault does not show is refused", () => {
    expect(() => drawSaid(knowledge, { exercise, complaint: "brake-weak" }, seededUniform(1))).toThrow(
      /does not show as "brake-weak"/,
    );
  });
});
