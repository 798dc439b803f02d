import { expect, test } from "vitest";
import { foldCase, type KnownEntry } from "../../lib/case/index.ts";
import { situationOf } from "../../lib/case/situation.ts";
import { groundCar, proposeChecks, weigh, weighing } from "../../lib/engine/index.ts";
import { made, opening, second } from "../support/made-entries.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";

const knowledge = shippedKnowledge();
const CAR = { front: { layout: "strut" }, odometerKm: 130_000, ageYears: 10 };

function caseWith(...answers: readonly [finding: string, state: string][]): ReturnType<typeof situationOf> {
  const entries = answers.map(([finding, state], i) =>
    made("c1", `a${i}`, second(i + 1), { kind: "answered", finding, state, how: "report" }),
  );
  const state = foldCase([opening("c1", { car: CAR }), ...entries] as KnownEntry[]);
  return situationOf(knowledge, state);
}

function asked({ car, contexts, answers }: ReturnType<typeof situationOf>): string[] {
  const grounded = groundCar(knowledge, car, contexts);
  return proposeChecks(grounded, answers, weighing(grounded, answers)).map((p) => p.id);
}

test("whether something happened to the car is asked once, whatever the answer was", () => {
  const first = asked(caseWith(["pull", "present"]));
  const context = knowledge.contexts.find((c) => first.includes(`ask:${c.id}`));
  expect(context).toBeDefined();
  for (const state of ["present", "absent", "unknown"]) {
    const again = asked(caseWith(["pull", "present"], [context?.id ?? "", state]));
    expect(again, state).not.toContain(`ask:${context?.id}`);
  }
});

test("what did not happen to the car weighs nothing, what did moves the chances", () => {
  const ranking = (situation: ReturnType<typeof situationOf>): unknown => {
    const grounded = groundCar(knowledge, situation.car, situation.contexts);
    return weigh(grounded, situation.answers).ranking;
  };
  const plain = ranking(caseWith(["pull", "present"]));
  expect(ranking(caseWith(["pull", "present"], ["kerb-strike", "absent"]))).toEqual(plain);
  expect(ranking(caseWith(["pull", "present"], ["kerb-strike", "present"]))).not.toEqual(plain);
});
