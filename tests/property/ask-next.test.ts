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
import type { Knowledge } from "../../lib/knowledge/schema/compiled.ts";
import { answersOf, anyCar } from "../support/random-answers.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";

const knowledge = shippedKnowledge();
const answers = answersOf(knowledge, 5);
const RUNS = { numRuns: 12, seed: 20261128 };
const who = fc.constantFrom<("owner" | "driver")[]>("owner", "driver");

function ask(
  car: Record<string, unknown>,
  given: readonly Answer[],
  by: "owner" | "driver",
  notAgain: readonly string[] = [],
  most = 12,
): LayQuestion[] {
  const grounded = groundCar(knowledge, car);
  return askNext(grounded, given, weighing(grounded, given), { most, who: by, notAgain });
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

  test("what would sound silly after what was said is not asked", () => {
    const after = (...given: readonly (readonly [string, "present" | "absent"])[]): string[] => {
      const said = [["noise", "present"] as const, ...given];
      return ask(
        {},
        said.map(([finding, state]): Answer => ({ finding, state, by: "report" })),
        "driver",
        [],
        200,
      ).map((q) => q.id);
    };
    expect(after()).toEqual(expect.arrayContaining(["ask:noise:constant", "ask:noise:braking-hard"]));
    expect(after(["noise:braking", "present"])).not.toContain("ask:noise:constant");
    expect(after(["noise:braking", "absent"])).not.toContain("ask:noise:braking-hard");
    expect(after(["noise:braking", "absent"])).toContain("ask:noise:constant");
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

/* What an owner is never asked to do by themselves: our own list, of the trade's common practice. */
const NEVER_ASKED =
  /\b(jack|ramp|axle stand|raise the car|lift the car|crawl|go under|lie under|underneath the car|spanner|screwdriver|pry|wheel nut|undo|unscrew|test drive|drive (a|round|with|up|off)|on the road and|remove|spin)\b/i;
const WARNING = /\b(do not|never|keep|leave|away from)\b/i;

describe("what an owner may try", () => {
  const tried = knowledge.checks.filter((c) => c.lay !== undefined);
  const who = { most: 200, who: "driver" } as const;

  /** Every question that any of the complaints leads to, on an unknown car. */
  const asked = knowledge.complaints.flatMap((c) => {
    const given: Answer[] = [{ finding: c.id, state: "present", by: "report" }];
    const grounded = groundCar(knowledge, {});
    return askNext(grounded, given, weighing(grounded, given), who);
  });
  const tries = asked.filter((q) => q.kind === "try");

  test("only checks of the standing car that need nobody else and lift, load, drive, spin or heat nothing", () => {
    expect(tried.length).toBeGreaterThan(15);
    expect(new Set(tries.map((q) => q.id.replace(/^try:|@.*/g, ""))).size).toBeGreaterThan(15);
    for (const { id } of tries) {
      const check = knowledge.checks.find((c) => c.id === id.replace(/^try:|@.*/g, ""));
      expect(check?.setUp, id).toBe(knowledge.setUps.start);
      expect(check?.helper, id).toBe(false);
      expect(check?.who, id).not.toBe("technician");
      expect(
        check?.does.filter((deed) => deed !== "moves"),
        id,
      ).toEqual([]);
    }
  });

  test("no question or step names what nobody may be asked to do", () => {
    for (const { question, steps, choices } of asked) {
      for (const text of [question, ...steps, ...choices.map((c) => c.label)]) {
        const asking = text.split(/(?<=[.?!:,])\s/).filter((s) => !WARNING.test(s));
        for (const sentence of asking) expect(sentence).not.toMatch(NEVER_ASKED);
      }
    }
  });

  test("a try says what to do, and no place is left open in its words", () => {
    for (const { steps, question, choices } of tries) {
      expect(steps.length).toBeGreaterThan(0);
      expect([question, ...steps].join(" ")).not.toContain("{");
      expect(choices.length).toBeGreaterThanOrEqual(3);
    }
    for (const q of asked.filter((x) => x.kind === "question")) expect(q.steps).toEqual([]);
  });

  test("what was found by hand at one place is not tried again there", () => {
    const given: Answer[] = [{ finding: "noise", state: "present", by: "report" }];
    const grounded = groundCar(knowledge, {});
    for (const question of tries.slice(0, 12)) {
      for (const choice of question.choices) {
        const more = [...given, ...taken(choice).map((a): Answer => ({ ...a, by: "check" }))];
        const again = askNext(grounded, more, weighing(grounded, more), who);
        const findings = new Set(
          again.flatMap((q) => q.choices.flatMap((c) => c.answers.map((a) => a.finding))),
        );
        for (const { finding } of choice.answers) expect(findings).not.toContain(finding);
      }
    }
  });

  test("a place that was told in general is not asked for by its corners", () => {
    const single = tried.find((c) => c.lay?.settles.length === 1 && c.places.length > 1);
    const [observation = ""] = single?.lay?.settles ?? [];
    const given: Answer[] = [
      { finding: "noise", state: "present", by: "report" },
      { finding: observation, state: "absent", by: "report" },
    ];
    const grounded = groundCar(knowledge, {});
    const ids = askNext(grounded, given, weighing(grounded, given), who).map((q) => q.id);
    expect(ids).not.toContain(`try:${single?.id}`);
  });
});

describe("releases without lay words", () => {
  test("are asked in their own words, and nothing is tried", () => {
    const old: Knowledge = { ...knowledge, lay: undefined };
    const bare = (record: { lay?: unknown }): void => expect(record.lay).toBeUndefined();
    const { complaints, features, contexts, checks } = stripped(old);
    for (const list of [complaints, features, contexts, checks]) list.forEach(bare);
    const grounded = groundCar({ ...old, complaints, features, contexts, checks }, {});
    const given: Answer[] = [{ finding: "noise", state: "present", by: "report" }];
    const asked = askNext(grounded, given, weighing(grounded, given), { most: 30, who: "driver" });
    expect(asked.length).toBeGreaterThan(5);
    expect(asked.every((q) => q.kind === "question" && q.choices.at(-1)?.label === "Don't know")).toBe(true);
    const own = new Set([...features, ...complaints, ...contexts].map((r) => r.question));
    for (const { question } of asked) expect(own).toContain(question);
  });
});

function stripped(of: Knowledge): Pick<Knowledge, "complaints" | "features" | "contexts" | "checks"> {
  const without = <T extends { lay?: unknown }>(list: readonly T[]): T[] =>
    list.map((record) => ({ ...record, lay: undefined }));
  return {
    complaints: without(of.complaints),
    features: without(of.features),
    contexts: without(of.contexts),
    checks: without(of.checks),
  };
}
