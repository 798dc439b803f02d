import { describe, expect, it } from "vitest";
import { readText } from "../../lib/words/index.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";
import { labelsOf, TOLD } from "../support/told-sentences.ts";

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

// Labels were set by hand from the sentences alone (common practice, no source); see told-sentences.ts.
describe("labelled sentences of owners, drivers and mechanics", () => {
  const scores = TOLD.map(([text, labels]) => scoreOf(text, labels));

  it("holds enough of them to measure by", () => {
    expect(TOLD.length).toBeGreaterThanOrEqual(120);
    expect(new Set(TOLD.map(([text]) => text)).size).toBe(TOLD.length);
  });

  it("finds what a careful reader finds, and little else", () => {
    const sum = (of: (score: Score) => number) => scores.reduce((total, score) => total + of(score), 0);
    const right = sum((score) => score.right);
    const recall = right / (right + sum((score) => score.missed.length));
    const precision = right / (right + sum((score) => score.wrong.length));
    const slips = scores
      .filter((score) => score.missed.length > 0 || score.wrong.length > 0)
      .map(
        (score) => `  ${score.text}\n    missed: ${score.missed.join(" ")}  wrong: ${score.wrong.join(" ")}`,
      );
    process.stdout.write(
      `free text: ${TOLD.length} sentences, ${right} findings right, recall ${recall.toFixed(3)}, precision ${precision.toFixed(3)}\n${slips.join("\n")}\n`,
    );
    expect(recall).toBeGreaterThanOrEqual(0.9);
    expect(precision).toBeGreaterThanOrEqual(0.9);
  });
});
