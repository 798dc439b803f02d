import { beforeEach, describe, expect, test } from "vitest";
import { advise, book, questions } from "../../app/engine/desk-answers.ts";
import type { Situation } from "../../app/engine/protocol.ts";
import { load, weighingOf } from "../../app/engine/worked-out.ts";
import { ownMessage } from "../../app/ui/desk/own-message.ts";
import { drawCourse, groundCar, workshopCosts } from "../../lib/engine/index.ts";
import { seededUniform } from "../../lib/maths/seeded-uniform.ts";
import { plainAdvice } from "../support/plain-advice.ts";
import { tinyKnowledge } from "../support/tiny-knowledge.ts";

/* What the worker says at the desk, on the tiny, invented knowledge; the library alone is what it is held to. */

const { knowledge } = tinyKnowledge();
const situation: Situation = {
  car: { front: { layout: "strut" }, odometerKm: 130_000, ageYears: 10 },
  contexts: [],
  fitted: [],
  answers: [{ finding: "noise", state: "present", by: "report" }],
};
const options = { who: "technician", lift: true, helper: true, notPossible: [] } as const;
const own = { prices: {} };

beforeEach(() => load(JSON.stringify({ ...knowledge, advice: plainAdvice() }), true));

describe("visits played ahead", () => {
  test("go on where they ended, and are those of the library from the same seed", async () => {
    const four = await book({ ...situation, options, own, visits: 4 });
    const nine = await book({ ...situation, options, own, visits: 9 });
    expect(four?.booking.visits).toBe(4);
    expect(nine?.booking.visits).toBe(9);
    expect(nine?.whole.slice(0, 4)).toEqual(four?.whole);
    const grounded = groundCar(knowledge, situation.car, [], []);
    const uniform = seededUniform(1);
    const costs = workshopCosts(knowledge, own);
    const alone = Array.from({ length: 9 }, () =>
      drawCourse(grounded, situation.answers, weighingOf(situation), { ...options, costs, uniform }),
    );
    expect(nine?.whole).toEqual(alone.map((c) => (c?.checking ?? 0) + (c?.repairing ?? 0)));
  });

  test("are given up when a newer answer is asked about", async () => {
    const old = book({ ...situation, options, own, visits: 1000 });
    const answers = [
      ...situation.answers,
      { finding: "noise:small-bumps", state: "absent", by: "report" },
    ] as const;
    const newer = book({ ...situation, answers, options, own, visits: 2 });
    expect(await old).toBeUndefined();
    expect((await newer)?.booking.visits).toBe(2);
  });

  test("there are none of a car that nobody complains of", async () => {
    expect(await book({ ...situation, answers: [], options, own, visits: 3 })).toBeUndefined();
  });
});

test("whether to drive is said with the parts to have ready; not by knowledge that holds no advice", () => {
  const given = advise({ ...situation, own });
  expect(plainAdvice().levels.map((level) => level.id)).toContain(given?.drive.level);
  expect(given?.parts.length).toBeGreaterThan(0);
  load(JSON.stringify({ ...knowledge, advice: undefined }), true);
  expect(advise({ ...situation, own })).toBeUndefined();
});

test("an answer left open is not asked again", () => {
  const [first] = questions({ ...situation, options: { most: 3, who: "driver" } });
  const open = first?.choices.at(-1)?.answers.map((answer) => ({ ...answer, by: "report" as const })) ?? [];
  expect(open.length).toBeGreaterThan(0);
  const then = questions({
    ...situation,
    answers: [...situation.answers, ...open],
    options: { most: 30, who: "driver" },
  });
  expect(then.map((question) => question.id)).not.toContain(first?.id);
});

describe("a message that somebody wrote in", () => {
  test("is read back from its draft, and words in any other form are kept as words", () => {
    expect(ownMessage("")).toEqual({});
    expect(ownMessage(JSON.stringify({ of: "made", text: "mine" }))).toEqual({ of: "made", text: "mine" });
    expect(ownMessage(JSON.stringify({ of: "made", put: "mine" }))).toEqual({ of: "made", put: "mine" });
    expect(ownMessage("{half a draft")).toEqual({ text: "{half a draft" });
    for (const odd of ["null", "3", '"words"', "[]"]) expect(ownMessage(odd)).toEqual({ text: odd });
    expect(ownMessage(JSON.stringify({ text: 3 }))).toEqual({});
  });
});
