import { describe, expect, test } from "vitest";
import { answerWeighRequest, type WeighAnswer } from "../../lib/requests/weigh-request.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";
import { CASE_FINDINGS } from "./case-findings.ts";
import { carOf, type FieldCase, fieldCases, namesCause } from "./field-cases.ts";

/*
 * Solved complaints from public sources (each line of field-cases.jsonl names its own). They are a sample of the world
 * and no target: knowledge is added by kinds of cause, never by case. The bars are the ones that were set beforehand.
 */
const knowledge = shippedKnowledge();
const cases = fieldCases();

function ask(c: FieldCase, findings: readonly string[]): WeighAnswer {
  return answerWeighRequest(knowledge, {
    car: carOf(c),
    text: c.complaint,
    findings: findings.map((f) => ({
      id: f.replace(/^!/, ""),
      state: f.startsWith("!") ? "absent" : "present",
    })),
    limit: 20,
  });
}

/** Place of the true part in the ranking, 0 when it is not listed. */
function rankOf(c: FieldCase, answer: WeighAnswer): number {
  return answer.ranking.findIndex((row) => namesCause(row.names, c.causeParts)) + 1;
}

describe("solved complaints", () => {
  const told = cases
    .map((c) => ({ c, answer: ask(c, []) }))
    .map(({ c, answer }) => ({ c, answer, rank: rankOf(c, answer) }));
  const checked = cases
    .filter((c) => CASE_FINDINGS[c.id] !== undefined)
    .map((c) => ({ c, rank: rankOf(c, ask(c, CASE_FINDINGS[c.id] ?? [])) }));

  test("there are 25 of them, and most say what was checked", () => {
    expect(cases).toHaveLength(25);
    expect(checked.length).toBeGreaterThanOrEqual(21);
    const lines = told.map(({ c, answer, rank }) => {
      const proof = checked.find((x) => x.c === c)?.rank;
      return [
        c.id,
        c.causeParts.join(", ").slice(0, 34).padEnd(34),
        String(rank || "-").padStart(4),
        String(proof ?? "").padStart(4),
        ` ${answer.ranking[0]?.suspect ?? ""}`,
      ].join(" ");
    });
    process.stdout.write(
      `case true part                          told proof  leader on the words alone\n${lines.join("\n")}\n`,
    );
  });

  test("from the words alone the true part is in the top 3 in at least 15 and in the top 8 in at least 20", () => {
    const within = (most: number): number => told.filter((t) => t.rank > 0 && t.rank <= most).length;
    expect(within(3)).toBeGreaterThanOrEqual(15);
    expect(within(8)).toBeGreaterThanOrEqual(20);
  });

  test("with the checks and the decisive observation it is first in at least 21 of those that tell of any", () => {
    expect(checked.filter((x) => x.rank === 1).length).toBeGreaterThanOrEqual(21);
  });
});
