import { beforeEach, describe, expect, test, vi } from "vitest";
import type { Situation } from "../../app/engine/protocol.ts";
import { foresee, load, previews, proposals, weighingOf } from "../../app/engine/worked-out.ts";
import type * as Weigh from "../../lib/engine/weigh.ts";
import { weighing } from "../../lib/engine/weigh.ts";
import { tinyKnowledge } from "../support/tiny-knowledge.ts";

/* What the worker keeps, so that nothing is weighed twice. */

vi.mock("../../lib/engine/weigh.ts", async (original) => {
  const real = await original<typeof Weigh>();
  return { ...real, weighing: vi.fn(real.weighing) };
});
const weighed = vi.mocked(weighing);

const situation: Situation = {
  car: { front: { layout: "strut" }, odometerKm: 130_000, ageYears: 10 },
  contexts: [],
  fitted: [],
  answers: [{ finding: "noise", state: "present", by: "report" }],
};

beforeEach(() => {
  load(JSON.stringify(tinyKnowledge().knowledge), true);
  weighed.mockClear();
});

describe("results foreseen for the open check", () => {
  test("are each weighed once: for what they would do, for what comes next, and when one of them comes", async () => {
    const options = { only: "checks" } as const;
    const [check] = proposals(situation, options);
    expect(check).toBeDefined();
    const results = previews(situation, check!);
    expect(results.length).toBeGreaterThan(1);
    expect(weighed).toHaveBeenCalledTimes(1 + results.length);
    await foresee(situation, options, check);
    expect(previews(situation, check!)).toBe(results);
    const likeliest = results.toSorted((a, b) => b.probability - a.probability)[0]!;
    // As the page says it after a tap: fields in the order of a case.
    const found = likeliest.answers.map(({ finding, state, level, by }) => ({
      finding,
      state,
      ...(level !== undefined && { level }),
      by,
    }));
    const { ranking } = weighingOf({ ...situation, answers: [...situation.answers, ...found] }).weighed;
    expect(weighed).toHaveBeenCalledTimes(1 + results.length);
    expect(ranking.slice(0, likeliest.leaders.length)).toEqual(likeliest.leaders);
  });

  test("carry no weighing to the page", () => {
    const [check] = proposals(situation, {});
    for (const result of previews(situation, check!)) {
      expect(structuredClone(result)).toEqual(result);
      expect(result).not.toHaveProperty("weighing");
    }
  });
});
