import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { findingName, repairOfSuspect, suspectName } from "../../lib/engine/index.ts";
import {
  openPart,
  previewExercise,
  readCourse,
  readExercise,
  readExercisesFile,
  readyExercise,
} from "../../lib/training/index.ts";
import { frozenRelease } from "../support/frozen-release.ts";

/*
 * The twelve ready exercises, each played the best way on the frozen release that it names. What is hidden stands in the file;
 * that the way ends there is worked out.
 */
const KNOWLEDGE = join(import.meta.dirname, "../../knowledge");
const text = readFileSync(join(KNOWLEDGE, "exercises/harbour-lane.json"), "utf8");
const course = readCourse(text);

const knowledge = frozenRelease(course.exercises[0]?.release ?? "");

/** Each looked at once: a preview goes the whole way. */
const looked = course.exercises.map((exercise) => {
  const ready = readyExercise(knowledge, exercise);
  return { id: exercise.id, exercise, ready, preview: previewExercise(ready) };
});

/** Common practice, no source: what trainees are taught to tell apart. */
const FAMILIES = {
  noise: ["noise"],
  shake: ["shake"],
  pull: ["pull", "wander"],
  brake: ["brake-hot", "brake-weak"],
  steering: ["steering-heavy", "steering-play", "steering-poor-return", "steering-off-centre", "kickback"],
  "tyre wear": ["tyre-wear"],
  leak: ["fluid-leak"],
  "springs and dampers": ["sits-low", "bouncy", "bottoms-out", "dives-rolls", "harsh-ride"],
};

describe("the course", () => {
  test("holds twelve exercises with ids of their own, all worked with one frozen release", () => {
    expect(course.exercises).toHaveLength(12);
    expect(new Set(course.exercises.map((e) => e.id)).size).toBe(12);
    expect(new Set(course.exercises.map((e) => e.release))).toEqual(new Set([knowledge.version]));
  });

  test.each(Object.entries(FAMILIES))("has one about %s", (_, complaints) => {
    const about = course.exercises.map((e) => e.said.find((s) => s.state === "present")?.finding);
    expect(about.some((finding) => finding !== undefined && complaints.includes(finding))).toBe(true);
  });

  test("says that it is invented, and so does every car and customer", () => {
    expect(course.name).toMatch(/invented/);
    for (const { vehicle, customer } of course.exercises) {
      expect(vehicle).toMatch(/\(invented\)$/);
      expect(customer).toMatch(/\(invented\)$/);
    }
  });

  test("goes from easy to hard, with some of each", () => {
    const order = ["easy", "middling", "hard"];
    const levels = looked.map(({ preview }) => order.indexOf(preview.difficulty.level));
    expect(levels).toEqual(levels.toSorted((a, b) => a - b));
    for (const level of [0, 1, 2]) expect(levels.filter((l) => l === level).length).toBeGreaterThan(1);
  });
});

describe.each(looked)("$id", ({ exercise, ready, preview }) => {
  test("the best way ends at what is hidden, and what is hidden can be told from the rest", () => {
    const { difficulty, path, notTold } = preview;
    expect(difficulty.solvable).toBe(true);
    expect(path.length).toBeGreaterThan(0);
    expect(notTold).toEqual([]);
    const end = path.at(-1)?.inFront;
    expect(ready.causes.map(repairOfSuspect)).toContain(end?.repair);
    // Common practice, no source: sure enough to order the part, and no part beside it half as likely.
    expect(end?.chance).toBeGreaterThan(0.8);
    expect(exercise.terms.mostMinutes ?? Infinity).toBeGreaterThanOrEqual(difficulty.bestMinutes);
  });

  test("what a trainee gets does not name what is hidden", () => {
    // How the car is built is said as such: a "strut" there gives nothing away.
    const { car: _, ...told } = openPart(exercise);
    const open = JSON.stringify(told).toLowerCase();
    for (const suspect of [...ready.causes, ...ready.innocent]) {
      const part = knowledge.parts.find((p) => p.id === suspect.part);
      for (const word of [suspect.part, suspect.fault, part?.name, ...(part?.otherNames ?? [])]) {
        if (word === undefined) throw new Error(`${suspectName(knowledge, suspect)} is a part`);
        const named = word.toLowerCase().replace(/[.*+?^${}()|[\]\\]/g, "\\$&");
        // In whole words; parts of an id are none.
        expect(open).not.toMatch(new RegExp(`(?<![\\w-])${named}(?![\\w-])`));
      }
    }
    expect(open).not.toContain("hidden");
    expect(open).not.toContain(String(exercise.hidden.seed));
  });

  test("what is said has names that a trainee can read", () => {
    for (const { finding } of exercise.said) expect(findingName(knowledge, finding)).not.toBe("");
    expect(exercise.text.length).toBeGreaterThan(30);
    expect(exercise.about.length).toBeGreaterThan(10);
  });
});

describe("a file of either kind", () => {
  const [first] = course.exercises;

  test("is read by its own word of what it is", () => {
    expect(readExercisesFile(text)).toEqual({
      course: { name: course.name, about: course.about },
      exercises: course.exercises,
    });
    const one = JSON.stringify(first);
    expect(readExercisesFile(one)).toEqual({ course: undefined, exercises: [readExercise(one)] });
  });

  test.each([
    ["", /not JSON/],
    ["[]", /format/],
    [JSON.stringify({ ...first, format: "cornerwise-case" }), /no exercise and no course/],
    [JSON.stringify({ ...course, exercises: [{ ...first, said: [] }] }), /exercises\.0\.said/],
  ])("is refused with the field: %s", (bad, message) => {
    expect(() => readExercisesFile(bad)).toThrow(message);
  });
});
