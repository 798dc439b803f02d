import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  type Answer,
  askNext,
  groundCar,
  type LayChoice,
  type LayQuestion,
  weighing,
} from "../../lib/engine/index.ts";
import { answersOf, anyCar } from "../support/random-answers.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";

const knowledge = shippedKnowledge();
const answers = answersOf(knowledge, 5);
const RUNS = { numRuns: 25, seed: 20261128 };
const who = fc.constantFrom<("owner" | "driver")[]>("owner", "driver");

function ask(
  car: Record<string, unknown>,
  given: readonly Answer[],
  by: "owner" | "driver",
  notAgain: readonly string[] = [],
): LayQuestion[] {
  const grounded = groundCar(knowledge, car);
  return askNext(grounded, given, weighing(grounded, given), { most: 12, who: by, notAgain });
}

function taken(choice: LayChoice | undefined): Answer[] {
  return (choice?.answers ?? []).map((a) => ({ ...a, by: "report" as const }));
}

describe("questions for somebody who knows nothing of cars", () => {
  test("every question can be left open as the last choice, and no two choices or ids are alike", () => {
    fc.assert(
      fc.property(anyCar, answers, who, (car, given, by) => {
        const asked = ask(car, given, by);
        expect(new Set(asked.map((q) => q.id)).size).toBe(asked.length);
        for (const { question, choices } of asked) {
          expect(question).toMatch(/\?$/);
          expect(new Set(choices.map((c) => c.label)).size).toBe(choices.length);
          const last = choices.at(-1);
          expect(last?.label).toBe("Don't know");
          expect(last?.answers.length).toBeGreaterThan(0);
          expect(last?.answers.every((a) => a.state === "unknown")).toBe(true);
        }
      }),
      RUNS,
    );
  });

  test("whatever is chosen, the same is not asked again", () => {
    fc.assert(
      fc.property(anyCar, answers, who, fc.nat(20), (car, given, by, pick) => {
        const [first] = ask(car, given, by);
        if (first === undefined) return;
        const choice = first.choices[pick % first.choices.length];
        const again = ask(car, [...given, ...taken(choice)], by);
        expect(again.map((q) => q.id)).not.toContain(first.id);
      }),
      RUNS,
    );
  });

  test("what was said is not asked, and neither is what is not to be asked again", () => {
    fc.assert(
      fc.property(anyCar, answers, who, (car, given, by) => {
        const said = new Set(given.map((a) => a.finding));
        const asked = ask(car, given, by);
        for (const { choices } of asked) {
          const finding = choices[0]?.answers[0]?.finding ?? "";
          expect(said).not.toContain(finding);
        }
        const [first, ...others] = asked;
        if (first === undefined) return;
        expect(ask(car, given, by, [first.id]).slice(0, others.length)).toEqual(others);
      }),
      RUNS,
    );
  });

  test("asking changes nothing of what it is given and gives the same again", () => {
    fc.assert(
      fc.property(anyCar, answers, who, (car, given, by) => {
        const frozen = given.map((a) => Object.freeze({ ...a }));
        const grounded = groundCar(knowledge, car);
        const now = weighing(grounded, frozen);
        const before = JSON.stringify(now.weighed);
        const options = { most: 5, who: by };
        const first = askNext(grounded, Object.freeze(frozen), now, Object.freeze(options));
        expect(askNext(grounded, frozen, now, options)).toEqual(first);
        expect(JSON.stringify(now.weighed)).toBe(before);
        const anew = groundCar(knowledge, car);
        expect(askNext(anew, frozen, weighing(anew, frozen), options)).toEqual(first);
      }),
      RUNS,
    );
  });
});

describe("the first question of all", () => {
  test("with nothing told it is what is wrong with the car, with every complaint to choose", () => {
    const [first, ...more] = ask({}, [], "owner");
    expect(more).toEqual([]);
    const offered = first?.choices.slice(0, -1).map((c) => c.answers[0]?.finding);
    expect(offered?.toSorted()).toEqual(knowledge.complaints.map((c) => c.id).toSorted());
  });

  test("each of its choices but the last leads on to further questions", () => {
    const [first] = ask({}, [], "driver");
    for (const choice of first?.choices.slice(0, -1) ?? []) {
      expect(ask({}, taken(choice), "driver").length, choice.label).toBeGreaterThan(0);
    }
    expect(ask({}, taken(first?.choices.at(-1)), "driver")).toEqual([]);
  });
});
