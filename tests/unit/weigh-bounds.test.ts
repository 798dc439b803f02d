import { describe, expect, it } from "vitest";
import { betweenWords, provenWords } from "../../app/text/chance-words.ts";
import { type Answer, bounded, groundCar, rankingRows, weigh, weighing } from "../../lib/engine/index.ts";
import { answerWeighRequest, WeighAnswer } from "../../lib/requests/weigh-request.ts";
import { pick, seededUniform } from "../support/random-models.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";

/* What a weighing says when it is not exact. That the bounds hold is shown in tests/property/marginal-bounds.test.ts. */

const knowledge = shippedKnowledge();
const grounded = groundCar(knowledge, {});

/** So many findings seen by hand anywhere that links must be cut; no car has them. */
function answersOf(count: number): Answer[] {
  const nodes = [...grounded.nodes.keys()];
  const complaint = knowledge.complaints[0]?.id ?? "";
  return [
    { finding: complaint, state: "present", by: "report" },
    ...Array.from(
      pick(seededUniform(1), nodes.length, count),
      (k): Answer => ({ finding: nodes[k] ?? "", state: "present", by: "check" }),
    ),
  ];
}

describe("bounds of an approximate weighing", () => {
  it("stand beside every suspect and line, and hold what is shown", () => {
    const weighed = weigh(grounded, answersOf(450));
    expect(weighed.approximate).toBe(true);
    for (const { present, explains, presentBounds } of weighed.ranking) {
      expect(presentBounds).toBeDefined();
      const { low, high } = presentBounds!;
      expect(low).toBeLessThanOrEqual(present);
      expect(present).toBeLessThanOrEqual(high);
      expect(explains).toBeLessThanOrEqual(high);
    }
    for (const { present, presentBounds, suspects } of rankingRows(grounded, weighed)) {
      expect(presentBounds!.high).toBeLessThanOrEqual(1);
      expect(presentBounds!.high).toBeGreaterThanOrEqual(present - 1e-9);
      for (const one of suspects) {
        expect(presentBounds!.low).toBeGreaterThanOrEqual(one.presentBounds!.low);
      }
    }
  }, 60_000);

  it("are not worked out while nobody sees them; asked for later they are the same, and the best stays in front", () => {
    const ahead = weighing(grounded, answersOf(450));
    expect(ahead.weighed.approximate).toBe(true);
    expect(ahead.weighed.ranking.some((r) => "presentBounds" in r)).toBe(false);
    const shown = bounded(grounded, ahead);
    expect(shown).toEqual(weigh(grounded, answersOf(450)));
    const chances = shown.ranking.map((r) => r.explains);
    expect(chances).toEqual(chances.toSorted((a, b) => b - a));
    // Nothing was cut: nothing to bound.
    const plain = weighing(grounded, answersOf(2));
    expect(bounded(grounded, plain)).toBe(plain.weighed);
  }, 60_000);

  it("are in the answer to a request, and only then", () => {
    const ask = (count: number): WeighAnswer =>
      WeighAnswer.parse(
        answerWeighRequest(knowledge, {
          findings: answersOf(count).map(({ finding, state }) => ({ id: finding, state })),
        }),
      );
    const few = ask(2);
    expect(few.approximate).toBe(false);
    expect(few.ranking.some((r) => "presentBounds" in r)).toBe(false);
    const many = ask(450);
    expect(many.approximate).toBe(true);
    expect(many.ranking.every((r) => r.presentBounds !== undefined)).toBe(true);
  }, 60_000);

  it.each([
    [0.031, 0.199, "between 3 % and 20 %"],
    [0, 0.2, "at most 20 %"],
    [0.5, 1, "at least 50 %"],
    [0.001, 0.999, "anywhere from 0 % to 100 %"],
    [0.4, 0.4, "40 %"],
  ])("from %d to %d is said as %s, rounded outwards", (low, high, words) => {
    expect(betweenWords({ low, high })).toBe(words);
  });

  it("are said as a sentence; bounds that say nothing are called nothing", () => {
    expect(provenWords({ low: 0.5, high: 1 })).toBe("For certain: at least 50 % that it is there");
    expect(provenWords({ low: 0.001, high: 0.999 })).toMatch(/^Nothing is certain/);
  });
});
