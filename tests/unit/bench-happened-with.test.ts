import { expect, test } from "vitest";
import { happenedWith } from "../bench/happened-with.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";

test("what happened lately is drawn by its share and the fault's odds after it", () => {
  const knowledge = shippedKnowledge();
  const [context] = knowledge.contexts;
  const [fault] = knowledge.faults;
  if (context === undefined || fault === undefined) throw new Error("the knowledge holds nothing");
  const world = {
    ...knowledge,
    contexts: [{ ...context, share: 0.04 }],
    faults: [
      { ...fault, id: "after-work", contexts: { [context.id]: 40 } },
      { ...fault, id: "any-time", contexts: {} },
    ],
  };
  const drawn = (id: string) =>
    Array.from({ length: 4000 }, (_, seed) => happenedWith(world, id, seed).length).reduce((a, b) => a + b) /
    4000;
  // By hand: 0.04 x 40 = 1.6 against 0.96, so 1.6 / 2.56 = 0.625; four standard errors of 4,000 draws are 0.031.
  expect(Math.abs(drawn("after-work") - 0.625)).toBeLessThan(0.031);
  // Four standard errors at 0.04 are 0.0124.
  expect(Math.abs(drawn("any-time") - 0.04)).toBeLessThan(0.0124);
});
