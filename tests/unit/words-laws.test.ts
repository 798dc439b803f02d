import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readText } from "../../lib/words/index.ts";
import { parseFinding } from "../../lib/engine/finding-id.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";
import { TOLD } from "../support/told-sentences.ts";

const knowledge = shippedKnowledge();
const SEED = 20_240_611;
const runs = (numRuns: number) => ({ seed: SEED, numRuns });

/** Words that the reader knows, mixed with words and marks that it does not. */
const chatter = fc
  .array(
    fc.oneof(
      fc.constantFrom(...TOLD.flatMap(([text]) => text.split(" "))),
      fc.constantFrom(
        "no",
        "not",
        "only",
        "maybe",
        "without",
        "over",
        "60",
        "mph",
        "km/h",
        ",",
        ".",
        "but",
        "-",
        "’",
      ),
      fc.string({ maxLength: 6, unit: "grapheme" }),
    ),
    { maxLength: 40 },
  )
  .map((words) => words.join(" "));
const anyText = fc.oneof(
  chatter,
  fc.string({ maxLength: 400, unit: "binary" }),
  fc.constantFrom(...TOLD.map(([text]) => text)),
);

describe("laws of reading", () => {
  it("never throws, and gives known findings with exact, ordered words", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        for (const proposal of readText(knowledge, text)) {
          expect(() => parseFinding(knowledge, proposal.finding)).not.toThrow();
          expect(proposal.spans.length).toBeGreaterThan(0);
          expect(proposal.spans.map((s) => text.slice(s.from, s.to)).join(" … ")).toBe(proposal.words);
          for (const span of proposal.spans) expect(span.to).toBeGreaterThan(span.from);
          expect(proposal.confidence).toBeGreaterThan(0);
          expect(proposal.confidence).toBeLessThan(1);
        }
      }),
      runs(600),
    );
  });

  it("proposes each finding once", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const found = readText(knowledge, text).map((p) => p.finding);
        expect(new Set(found).size).toBe(found.length);
      }),
      runs(300),
    );
  });

  it("gives equal readings of equal texts, whatever was read between", () => {
    fc.assert(
      fc.property(anyText, anyText, (text, other) => {
        const before = readText(knowledge, text);
        readText(knowledge, other);
        expect(readText(knowledge, text)).toEqual(before);
      }),
      runs(200),
    );
  });

  it("does not depend on capitals", () => {
    for (const [text] of TOLD) {
      const plain = readText(knowledge, text).map((p) => [p.finding, p.state]);
      expect(readText(knowledge, text.toUpperCase()).map((p) => [p.finding, p.state])).toEqual(plain);
      expect(readText(knowledge, text.toLowerCase()).map((p) => [p.finding, p.state])).toEqual(plain);
    }
  });

  it("does not depend on which apostrophe is typed", () => {
    for (const [text] of TOLD.filter(([t]) => /['’]/.test(t))) {
      const plain = readText(knowledge, text).map((p) => [p.finding, p.state]);
      for (const mark of ["'", "’", "ʼ", "`"]) {
        const typed = readText(knowledge, text.replaceAll(/['’]/g, mark));
        expect(typed.map((p) => [p.finding, p.state])).toEqual(plain);
      }
    }
  });

  it("keeps every complaint when a sentence of something else follows", () => {
    const others = ["Thank you very much.", "Please ring me after four o'clock.", "The car is blue."];
    for (const [text] of TOLD) {
      const wanted = readText(knowledge, text).filter((p) =>
        knowledge.complaints.some((c) => c.id === p.finding),
      );
      for (const other of others) {
        const found = readText(knowledge, `${text}${/[.?!]$/.test(text) ? "" : "."} ${other}`).map(
          (p) => `${p.finding} ${p.state}`,
        );
        for (const p of wanted) expect(found).toContain(`${p.finding} ${p.state}`);
      }
    }
  });
});
