import { describe, expect, it } from "vitest";
import { readText } from "../../lib/words/index.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";
import { labelsOf, TOLD } from "../support/told-sentences.ts";
import { FIFTH } from "../support/told-sentences-fifth.ts";
import { FOURTH } from "../support/told-sentences-fourth.ts";
import { HELD_OUT } from "../support/told-sentences-held-out.ts";
import { THIRD } from "../support/told-sentences-third.ts";

/** What is read from a text, in the marks of the labels. */
function marksOf(text: string): string[] {
  return readText(shippedKnowledge(), text).map(({ finding, state }) =>
    state === "absent" ? `-${finding}` : finding,
  );
}

interface Score {
  readonly text: string;
  readonly right: number;
  readonly missed: readonly string[];
  readonly wrong: readonly string[];
}

function scoreOf(text: string, labels: string): Score {
  const { wanted, allowed } = labelsOf(labels);
  const read = marksOf(text);
  return {
    text,
    right: read.filter((mark) => wanted.has(mark)).length,
    missed: [...wanted].filter((mark) => !read.includes(mark)),
    wrong: read.filter((mark) => !wanted.has(mark) && !allowed.has(mark.replace(/^-/u, ""))),
  };
}

function measure(
  set: readonly (readonly [string, string])[],
  name: string,
): { recall: number; precision: number } {
  const scores = set.map(([text, labels]) => scoreOf(text, labels));
  const sum = (of: (score: Score) => number) => scores.reduce((total, score) => total + of(score), 0);
  const right = sum((score) => score.right);
  const recall = right / (right + sum((score) => score.missed.length));
  const precision = right / (right + sum((score) => score.wrong.length));
  const slips = scores
    .filter((score) => score.missed.length > 0 || score.wrong.length > 0)
    .map(
      (score) => `  ${score.text}\n    missed: ${score.missed.join(" ")}  wrong: ${score.wrong.join(" ")}\n`,
    );
  process.stdout.write(
    `${name}: ${set.length} sentences, ${right} findings right, recall ${recall.toFixed(3)}, precision ${precision.toFixed(3)}\n${slips.join("")}`,
  );
  return { recall, precision };
}

// Labels were set by hand from the sentences alone (common practice, no source); see told-sentences.ts.
describe("labelled sentences of owners, drivers and mechanics", () => {
  it("hold enough of them to measure by", () => {
    expect(TOLD.length).toBeGreaterThanOrEqual(120);
    const texts = [...TOLD, ...HELD_OUT, ...THIRD, ...FOURTH, ...FIFTH].map(([text]) => text);
    expect(new Set(texts).size).toBe(texts.length);
  });

  it("are read as a careful reader reads them, where the reading was mended by them", () => {
    const { recall, precision } = measure(TOLD, "free text, sentences worked with");
    expect(recall).toBeGreaterThanOrEqual(0.95);
    expect(precision).toBeGreaterThanOrEqual(0.95);
  });

  it("are read nearly so where they were held out", () => {
    const { recall, precision } = measure(HELD_OUT, "free text, sentences held out");
    expect(recall).toBeGreaterThanOrEqual(0.85);
    expect(precision).toBeGreaterThanOrEqual(0.85);
  });

  it("are read as a careful reader reads them in the later sets, first read unseen and mended by since", () => {
    for (const [set, name] of [
      [THIRD, "third"],
      [FOURTH, "fourth"],
      [FIFTH, "fifth"],
    ] as const) {
      const { recall, precision } = measure(set, `free text, ${name} set`);
      expect(recall).toBeGreaterThanOrEqual(0.93);
      expect(precision).toBeGreaterThanOrEqual(0.92);
    }
  });
});
