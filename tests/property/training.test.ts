import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { proposeChecks, weighing } from "../../lib/engine/index.ts";
import { seededUniform } from "../../lib/maths/seeded-uniform.ts";
import {
  drawExercise,
  type Exercise,
  exerciseResult,
  openPart,
  previewExercise,
  readExercise,
  type ReadyExercise,
  readyExercise,
  replayAttempt,
  scoreAttempt,
  type Step,
} from "../../lib/training/index.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";

/* Exercises on the shipped knowledge. That simulated results follow the model is shown in simulate.test.ts. */

const knowledge = shippedKnowledge();
const car = { drive: "front", front: { layout: "strut" }, odometerKm: 120_000, ageYears: 9 };

const exercise: Exercise = {
  format: "cornerwise-exercise",
  form: 1,
  id: "a-knock",
  name: "A knock (invented)",
  about: "",
  release: knowledge.version,
  car,
  vehicle: "demo car (invented)",
  customer: "invented",
  lately: [],
  text: "It knocks over small bumps.",
  said: [
    { finding: "noise", state: "present" },
    { finding: "noise:small-bumps", state: "present" },
  ],
  terms: { lift: true, helper: true, missingTools: [], hints: true, ranking: true },
  hidden: {
    seed: 11,
    faults: [
      { fault: "anti-roll-bar-link-worn", place: "front-left", causes: true },
      { fault: "front-damper-worn", place: "front-right", causes: false },
    ],
    results: [],
  },
};
const ready = readyExercise(knowledge, exercise);

/** The best check that is made by hand, from the start. */
const bestByHand =
  proposeChecks(ready.grounded, ready.car.told, weighing(ready.grounded, ready.car.told), {
    only: "checks",
  })[0]?.id ?? "";

/** Always the best check, until none tells anything or so many are made. */
function perfectSteps(of: ReadyExercise, most: number): Step[] {
  const answers = [...of.car.told];
  const steps: Step[] = [];
  let setUp: string | undefined;
  while (steps.length < most) {
    const [best] = proposeChecks(of.grounded, answers, weighing(of.grounded, answers), { setUp });
    if (best === undefined) break;
    steps.push({ kind: "check", id: best.id });
    answers.push(...exerciseResult(of, best.id));
    setUp = best.setUp;
  }
  return steps;
}

describe("scoring", () => {
  const steps = perfectSteps(ready, 8);

  test("who always makes the best check loses no minute", () => {
    const score = scoreAttempt(ready, { steps, conclusion: undefined });
    expect(score.lostMinutes).toBe(0);
    expect(score.right).toBeUndefined();
    expect(score.brier).toBeUndefined();
  });

  test("so does one who does on any drawn car, whatever is hidden in it", () => {
    for (const [complaint, level] of [
      ["shake", "easy"],
      ["tyre-wear", "middling"],
    ] as const) {
      const wish = {
        id: "drawn",
        name: "Drawn (invented)",
        release: knowledge.version,
        car,
        complaint,
        level,
      };
      const drawn = readyExercise(knowledge, drawExercise(knowledge, wish, seededUniform(5)).exercise);
      const score = scoreAttempt(drawn, { steps: perfectSteps(drawn, 5), conclusion: undefined });
      expect(score.minutes).toBeGreaterThan(0);
      expect(score.lostMinutes).toBe(0);
    }
  });

  test("acknowledging cautions early or late, and when a part is ordered, change no minute", () => {
    const check = bestByHand.split("@")[0] ?? "";
    const read: Step = { kind: "cautions-read", check };
    const ordered: Step = { kind: "ordered", repair: "steering-rack@front" };
    const plain = scoreAttempt(ready, { steps, conclusion: undefined });
    fc.assert(
      fc.property(fc.nat(steps.length), fc.nat(steps.length), (early, late) => {
        const mixed = steps.toSpliced(early, 0, read).toSpliced(late, 0, ordered);
        const score = scoreAttempt(ready, { steps: mixed, conclusion: undefined });
        for (const key of ["minutes", "lostMinutes", "bestMinutes", "afterProof", "unsafe"] as const)
          expect(score[key]).toEqual(plain[key]);
      }),
      { numRuns: 4, seed: 2 },
    );
  });

  test("any other order loses some, and a check that is repeated loses all its minutes", () => {
    const [first] = steps;
    if (first === undefined) throw new Error("there is a best check");
    const twice = replayAttempt(ready, [first, first]);
    expect(twice.checks[1]).toMatchObject({ repeated: true });
    expect(twice.checks[1]?.lost).toBeCloseTo(twice.checks[1]?.minutes ?? -1, 12);
    const worst = proposeChecks(ready.grounded, ready.car.told, weighing(ready.grounded, ready.car.told)).at(
      -1,
    );
    const score = scoreAttempt(ready, {
      steps: [{ kind: "check", id: worst?.id ?? "" }],
      conclusion: undefined,
    });
    expect(score.lostMinutes).toBeGreaterThan(0);
  });

  test("the same steps give the same score, however often they are gone through", () => {
    fc.assert(
      fc.property(fc.shuffledSubarray(steps, { minLength: 2, maxLength: 4 }), (some) => {
        const attempt = {
          steps: some,
          conclusion: { suspects: ["anti-roll-bar-link-worn@front-left"], confidence: 0.8 },
        };
        expect(scoreAttempt(ready, structuredClone(attempt))).toEqual(scoreAttempt(ready, attempt));
      }),
      { numRuns: 4, seed: 1 },
    );
  });

  test.each([
    [
      ["anti-roll-bar-link-worn@front-left"],
      { right: true, rightPart: true, complete: true, wrongParts: [] },
    ],
    [
      ["anti-roll-bar-link-worn@front-right"],
      { right: false, rightPart: true, complete: false, wrongParts: ["anti-roll-bar-link@front-right"] },
    ],
    // Innocent wear is no wrong part, but it is not the cause.
    [["front-damper-worn@front-right"], { right: false, rightPart: false, wrongParts: [] }],
    [
      ["anti-roll-bar-link-worn@front-left", "lower-ball-joint-worn@front-left"],
      { right: true, complete: false, wrongParts: ["lower-ball-joint@front-left"] },
    ],
  ])("a verdict of %j is scored by part and place", (suspects, expected) => {
    const score = scoreAttempt(ready, { steps: [], conclusion: { suspects, confidence: 0.75 } });
    expect(score).toMatchObject(expected);
    // Brier 1950: (0.75 - 1)^2 and (0.75 - 0)^2.
    expect(score.brier).toBe(expected.right ? 0.0625 : 0.5625);
    expect(score.jumped).toBe(true);
  });

  test("a part ordered in vain counts, and cautions that were not acknowledged are named", () => {
    const lifted: Step = { kind: "check", id: bestByHand };
    const without = scoreAttempt(ready, {
      steps: [{ kind: "ordered", repair: "steering-rack@front" }, lifted],
      conclusion: undefined,
    });
    expect(without.wrongParts).toEqual(["steering-rack@front"]);
    const check = lifted.id.split("@")[0] ?? "";
    const cautions = knowledge.checks.find((c) => c.id === check)?.cautions ?? [];
    expect(without.cautionsSkipped).toEqual(cautions.length > 0 ? [lifted.id] : []);
    const read = scoreAttempt(ready, {
      steps: [{ kind: "cautions-read", check }, lifted],
      conclusion: undefined,
    });
    expect(read.cautionsSkipped).toEqual([]);
  });
});

describe("results", () => {
  test("the instructor's own results go before the model's", () => {
    const id = bestByHand;
    const [first] = exerciseResult(ready, id);
    if (first === undefined) throw new Error("a check finds something");
    const turned = first.state === "present" ? ("absent" as const) : ("present" as const);
    const changed = readyExercise(knowledge, {
      ...exercise,
      hidden: { ...exercise.hidden, results: [{ finding: first.finding, state: turned }] },
    });
    expect(exerciseResult(changed, id)[0]?.state).toBe(turned);
  });

  test("what a trainee gets holds nothing that is hidden", () => {
    const text = JSON.stringify(openPart(exercise));
    for (const secret of ["hidden", "seed", "anti-roll-bar-link-worn", "front-damper-worn"])
      expect(text).not.toContain(secret);
  });
});

describe("setting an exercise", () => {
  test("the preview goes the best way and ends at the hidden part", () => {
    const preview = previewExercise(ready);
    expect(preview.path.length).toBeGreaterThan(0);
    expect(preview.difficulty.bestMinutes).toBeCloseTo(
      preview.path.reduce((sum, c) => sum + c.minutes, 0),
      9,
    );
    for (const { repair } of preview.traps) expect(repair).not.toBe("anti-roll-bar-link@front-left");
  });

  test.each(["easy", "middling", "hard"] as const)(
    "a %s one is drawn, follows the form and can be worked",
    (level) => {
      const drawn = drawExercise(
        knowledge,
        { id: "drawn", name: "Drawn (invented)", release: knowledge.version, car, complaint: "noise", level },
        seededUniform(3),
      );
      expect(readExercise(JSON.stringify(drawn.exercise))).toEqual(drawn.exercise);
      expect(drawn.difficulty.level).toBe(level);
      expect(readyExercise(knowledge, drawn.exercise).causes.length).toBeGreaterThan(0);
    },
  );

  test.each([
    [{ ...exercise, said: [{ finding: "noise:small-bumps", state: "present" }] }, /nobody complains/],
    [
      {
        ...exercise,
        hidden: {
          ...exercise.hidden,
          faults: [{ fault: "no-such-fault", place: "front-left", causes: true }],
        },
      },
      /has no "no-such-fault"/,
    ],
  ])("an exercise that cannot be worked says why", (bad, message) => {
    expect(() => readyExercise(knowledge, bad as Exercise)).toThrow(message);
  });

  test.each([
    ["{", /not JSON/],
    [JSON.stringify({ ...exercise, extra: 1 }), /extra/],
    [JSON.stringify({ ...exercise, hidden: { seed: 1, faults: [] } }), /hidden\.faults/],
  ])("a file that is no exercise is refused with the field", (text, message) => {
    expect(() => readExercise(text)).toThrow(message);
  });
});
