import { readFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import * as library from "../../lib/index.ts";
import * as training from "../../lib/training/index.ts";
import { loadBare } from "../support/bare-library.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";

const ROOT = join(import.meta.dirname, "../..");
const REQUEST = {
  car: { drive: "front", front: { layout: "strut" }, odometerKm: 140_000 },
  text: "Clunk from the front over small bumps, none when braking.",
  findings: [{ id: "noise:humps", state: "absent", by: "report" }],
  limit: 5,
};

describe("the library in a world with the language and nothing else", () => {
  let bare: typeof library;
  beforeAll(() => {
    bare = loadBare(join(ROOT, "lib/index.ts")) as unknown as typeof library;
  });

  it("has no process, console, timers, URL or clock to reach for", () => {
    const reach = join(ROOT, "tests/support/reaches-out.ts");
    const tries = loadBare(reach) as Record<string, () => unknown>;
    expect(Object.keys(tries).length).toBeGreaterThan(5);
    for (const [name, attempt] of Object.entries(tries)) expect(attempt, name).toThrow();
  });

  it("offers everything that it offers elsewhere", () => {
    expect(
      Object.keys(bare)
        .filter((name) => name !== "__esModule")
        .sort(),
    ).toEqual(Object.keys(library).sort());
  });

  it("reads, weighs and proposes with the same result", () => {
    const text = JSON.stringify(shippedKnowledge());
    const wanted = library.answerWeighRequest(library.parseRelease(text), REQUEST);
    const got = bare.answerWeighRequest(bare.parseRelease(text), REQUEST);
    expect(wanted.ranking).toHaveLength(5);
    expect(wanted.read.length).toBeGreaterThan(2);
    expect(JSON.parse(JSON.stringify(got))).toEqual(JSON.parse(JSON.stringify(wanted)));
  });

  it("draws an exercise and answers its checks", () => {
    const door = join(ROOT, "lib/training/index.ts");
    const there = loadBare(door) as unknown as typeof training;
    const text = readFileSync(join(ROOT, "knowledge/exercises/harbour-lane.json"), "utf8");
    const results = ({ readCourse, readyExercise, exerciseResult }: typeof training) => {
      const exercise = readCourse(text).exercises[0];
      if (exercise === undefined) throw new Error("the course holds exercises");
      const ready = readyExercise(shippedKnowledge(), exercise);
      const checks = library.placedChecks(ready.grounded).slice(0, 40);
      return checks.map(({ id }) => exerciseResult(ready, id));
    };
    expect(results(training).flat().length).toBeGreaterThan(0);
    expect(JSON.parse(JSON.stringify(results(there)))).toEqual(results(training));
  });

  it("folds, exports, imports and prints a case", () => {
    const entries: library.KnownEntry[] = [
      {
        id: "e1",
        caseId: "c1",
        at: "2026-01-01T09:00:00.000Z",
        by: "ana",
        kind: "opened",
        release: "aaa",
        car: {},
        customer: "Invented Customer",
        vehicle: "invented hatchback",
      },
      { id: "e2", caseId: "c1", at: "2026-01-01T09:00:01.000Z", by: "ana", kind: "told", text: "It clunks." },
    ];
    const state = bare.foldCase(bare.importCase(bare.exportCase(entries)).entries);
    const none = { ranking: [], notInKnowledge: 0, notices: [] };
    expect(bare.jobCard(shippedKnowledge(), state, none).complaint.words).toEqual(["It clunks."]);
  });
});

describe("what the README shows of the library", () => {
  it("is there under those names", () => {
    const readme = readFileSync(join(ROOT, "README.md"), "utf8");
    const names = /import \{ ([^}]+) \} from "cornerwise"/.exec(readme)?.[1]?.split(", ") ?? [];
    expect(names.length).toBeGreaterThan(0);
    for (const name of names) expect(library).toHaveProperty(name);
  });
});
