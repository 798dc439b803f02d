import { expect, test } from "vitest";
import { answerWeighRequest } from "../../lib/requests/weigh-request.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";
import { carOf, fieldCases, namesCause } from "./field-cases.ts";

/*
 * A second sample of solved complaints from public sources (each line of second-sample.jsonl names its own), gathered when
 * the knowledge was written. At first sight, before anything was changed for it, the true part was in the top 3 in 8 and in
 * the top 8 in 9 of these 24; what was then mended is the reading of ordinary sentences, creaking bushes, loose rack
 * mountings and early failures. The bars are floors that were set afterwards: they keep what was won, and prove nothing.
 */
test("a second sample: the true part is not further back than it was", () => {
  const knowledge = shippedKnowledge();
  const cases = fieldCases("second-sample.jsonl");
  expect(cases).toHaveLength(24);
  const ranks = cases.map((c) => {
    const answer = answerWeighRequest(knowledge, {
      car: carOf(c),
      text: c.complaint,
      findings: [],
      limit: 40,
    });
    return { c, rank: answer.ranking.findIndex((row) => namesCause(row.names, c.causeParts)) + 1 };
  });
  const lines = ranks.map(({ c, rank }) => `${c.id} ${String(rank || "-").padStart(3)}  ${c.cause}`);
  process.stdout.write(`second sample, rank on the words alone\n${lines.join("\n")}\n`);
  const within = (most: number): number => ranks.filter(({ rank }) => rank > 0 && rank <= most).length;
  expect(within(3)).toBeGreaterThanOrEqual(8);
  expect(within(8)).toBeGreaterThanOrEqual(12);
});
