import { describe, expect, test } from "vitest";
import { answerWeighRequest, WeighAnswer } from "../../lib/requests/weigh-request.ts";
import { runCommand } from "../support/run-command.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";

/*
 * The one fixed contract: programs outside hold on to these fields. They are those of the project's own issue, written
 * out here by hand so that a change of name cannot slip through.
 */
const knowledge = shippedKnowledge();

describe("the weigh contract", () => {
  test("a request with every field answers with every field of the contract", () => {
    const answer = answerWeighRequest(knowledge, {
      car: { drive: "front", odometerKm: 120_000, ageYears: 9 },
      text: "clunk from the front left over small bumps",
      findings: [{ id: "shake", state: "absent" }],
      limit: 10,
    });
    expect(WeighAnswer.safeParse(answer).success).toBe(true);
    expect(Object.keys(answer)).toEqual(
      expect.arrayContaining(["release", "read", "ranking", "notInKnowledge", "next"]),
    );
    expect(answer.release).toMatch(/^\d+\.\d+\.\d+$/);
    expect(answer.ranking).toHaveLength(10);
    for (const row of answer.ranking) {
      expect(Object.keys(row)).toEqual(
        expect.arrayContaining(["suspect", "part", "names", "fault", "place", "probability"]),
      );
      expect(row.names).toContain(row.part);
      expect(row.probability).toBeGreaterThanOrEqual(0);
      expect(row.probability).toBeLessThanOrEqual(1);
    }
    for (const read of answer.read) {
      expect(Object.keys(read).sort()).toEqual(["finding", "name", "state", "words"]);
      expect("clunk from the front left over small bumps").toContain(read.words.split(" … ")[0] ?? "?");
    }
    expect(answer.read.map((r) => r.finding)).toEqual(
      expect.arrayContaining(["noise:clunk", "noise:from-front", "noise:from-left", "noise:small-bumps"]),
    );
    expect(answer.next.length).toBeGreaterThan(0);
    for (const next of answer.next) {
      expect(Object.keys(next)).toEqual(
        expect.arrayContaining(["check", "name", "minutes", "setUp", "gainBits"]),
      );
    }
  });

  test("every field is optional, null counts as left out, and the ranking falls from line to line", () => {
    for (const request of [
      {},
      { car: null, text: null, findings: null, limit: null },
      { car: { drive: null } },
    ]) {
      const { ranking, read } = answerWeighRequest(knowledge, request);
      expect(read).toEqual([]);
      expect(ranking.length).toBeGreaterThan(0);
      ranking.forEach((row, k) => {
        expect(row.probability).toBeLessThanOrEqual(ranking[k - 1]?.probability ?? 1);
      });
    }
  });

  test("what is given counts over what was read, and fields that nobody knows are named", () => {
    const told = answerWeighRequest(knowledge, { text: "it pulls to the left" });
    const denied = answerWeighRequest(knowledge, {
      text: "it pulls to the left",
      findings: [
        { id: "pull", state: "absent" },
        { id: "pull:pull-left", state: "absent" },
      ],
      note: "from a script",
      car: { colour: "blue" },
    });
    expect(told.target).toBe("complaint");
    expect(denied.target).toBe("none");
    expect(denied.problems.map((p) => p.finding)).toEqual(expect.arrayContaining(["note", "car.colour"]));
  });

  test.each([
    ["an unknown finding", { findings: [{ id: "no-such", state: "present" }] }, "unknown-id"],
    ["a drive that is none", { car: { drive: "sideways" } }, "bad-request"],
    ["a state that is none", { findings: [{ id: "noise", state: "maybe" }] }, "bad-request"],
    ["a limit of nought", { limit: 0 }, "bad-request"],
    ["a set-up that is none", { setUp: "in-the-air" }, "unknown-id"],
    ["no object", 7, "bad-request"],
  ])("%s is a coded error", (_, request, code) => {
    expect(() => answerWeighRequest(knowledge, request)).toThrowError(expect.objectContaining({ code }));
  });

  test("--lines answers line by line, in order, with an error object for a bad line", async () => {
    const lines = [
      '{"text":"it clunks"}',
      "{not json",
      '{"findings":[{"id":"no-such","state":"present"}]}',
      "{}",
    ];
    const { code, out } = await runCommand(["weigh", "--lines"], { stdin: `${lines.join("\n")}\n` });
    const answers = out
      .trim()
      .split("\n")
      .map((line) => JSON.parse(line) as { error?: { code: string }; read?: unknown[] });
    expect(code).toBe(0);
    expect(answers).toHaveLength(4);
    expect(answers.map((a) => a.error?.code)).toEqual([undefined, "bad-request", "unknown-id", undefined]);
    expect(answers[0]?.read?.length).toBeGreaterThan(0);
  });

  test("one request prints one JSON object; nothing on standard input is an error that says what to give", async () => {
    const { out } = await runCommand(["weigh"], { stdin: '{"text":"it clunks","limit":3}' });
    expect((JSON.parse(out) as { ranking: unknown[] }).ranking).toHaveLength(3);
    const empty = await runCommand(["weigh"]);
    expect(empty.code).not.toBe(0);
    expect(empty.err).toContain("standard input is empty");
  });
});
