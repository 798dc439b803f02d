import { describe, expect, it } from "vitest";
import { meansOf } from "../../lib/training/best-way.ts";
import { lacksOf, readyExercise, whyNotHere } from "../../lib/training/index.ts";
import { madeExercise } from "../support/made-exercise.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";

/* The instructor's list holds each tool as the checks name it, so that one must not stand for another: by design, no source. */
const knowledge = shippedKnowledge();
const terms = (missingTools: string[], more = {}) => ({
  ...madeExercise().terms,
  ...more,
  missingTools,
});
const named = (tool: string) => knowledge.checks.filter(({ tools }) => tools.includes(tool));
const leftOut = (missing: string[]) =>
  meansOf({ exercise: { terms: terms(missing) }, grounded: { knowledge } }).notPossible;

describe("tools that an exercise does not have", () => {
  it("leaves out the checks that name 'this or that' when the whole of it is missing", () => {
    const tool = "lift or jack and stands";
    expect(named(tool).length).toBeGreaterThan(0);
    expect(leftOut([tool])).toEqual(named(tool).map(({ id }) => id));
    for (const check of named(tool))
      expect(lacksOf(knowledge, terms([tool]), check)).toEqual([`no ${tool} is there`]);
  });

  it("leaves in a check whose tool only holds the word of a missing one", () => {
    const [check] = named("tape measure");
    if (check === undefined) throw new Error("no check takes a tape measure");
    expect(leftOut(["tape"])).not.toContain(check.id);
    expect(lacksOf(knowledge, terms(["tape"]), check)).toEqual([]);
    expect(lacksOf(knowledge, terms(["tape measure"]), check)).toEqual(["no tape measure is there"]);
  });

  it("names all that is not there, and lets what needs none of it be made", () => {
    const ready = readyExercise(
      knowledge,
      madeExercise({ terms: terms(["pry bar"], { lift: false, helper: false }) }),
    );
    const lifted = knowledge.setUps.setUps.filter(({ needs }) => needs === "lift").map(({ id }) => id);
    for (const check of knowledge.checks) {
      const lacks = lacksOf(knowledge, ready.exercise.terms, check);
      const expected = [lifted.includes(check.setUp), check.helper, check.tools.includes("pry bar")];
      expect(lacks).toHaveLength(expected.filter(Boolean).length);
    }
    expect(whyNotHere(ready, "ask:noise:small-bumps")).toBeUndefined();
  });
});
