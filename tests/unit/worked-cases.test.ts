import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { compareCases, MOVED_BY, whatMoved } from "../../lib/case/moved-cases.ts";
import { type PlayedCase, playWorkedCase, type WorkedCaseInput } from "../../lib/case/worked-case.ts";
import { readKnowledge } from "../../lib/knowledge/read.ts";
import { parseRelease } from "../../lib/knowledge/release.ts";
import { shippedFiles, shippedKnowledge } from "../support/shipped-knowledge.ts";
import { patch, tinyKnowledge } from "../support/tiny-knowledge.ts";

const { authored, knowledge } = tinyKnowledge();
const knock = authored.workedCases[0] as WorkedCaseInput;

describe("one worked case", () => {
  test("the true part leads when its own finding was seen by hand", () => {
    const { leader, truth, leftOut } = playWorkedCase(knowledge, knock);
    expect(leader.id).toBe("bar-link-worn@front-left");
    expect(truth).toEqual({ ...leader, rank: 1 });
    expect(leftOut).toEqual([]);
  });

  test("what the version does not know is left out and named", () => {
    const strange = {
      ...knock,
      car: { ...knock.car, springs: "wooden", ageYears: 4000 },
      findings: [
        ...knock.findings,
        { id: "no-such-thing@front-left", state: "present" as const, by: "check" as const },
        { id: "joint-play@front-left", state: "present" as const, level: "gone", by: "check" as const },
      ],
    };
    const played = playWorkedCase(knowledge, strange);
    expect(played.leftOut).toEqual([
      "no-such-thing@front-left",
      "joint-play@front-left",
      "car.springs",
      "car.ageYears",
    ]);
    expect(played.leader).toEqual(playWorkedCase(knowledge, knock).leader);
  });

  test("a fault that the version does not hold has no rank and no chance", () => {
    const gone = { ...knock, truth: { fault: "bar-link-bent", place: "front-left" } };
    expect(playWorkedCase(knowledge, gone).truth).toMatchObject({ probability: 0, rank: 0 });
  });
});

describe("two versions", () => {
  test("the same knowledge moves nothing", () => {
    const [same] = compareCases(knowledge, knowledge, [knock]);
    expect(same?.moved).toEqual([]);
    expect(same?.before).toEqual(same?.after);
  });

  test("a link that proves less lets its case move, and the words say from where to where", () => {
    const weaker = tinyKnowledge((records) =>
      patch(records, "observations/link-play.json", { leak: 0.6 }),
    ).knowledge;
    const [compared] = compareCases(knowledge, weaker, [knock]);
    const fall = (compared?.before.truth.probability ?? 0) - (compared?.after.truth.probability ?? 1);
    expect(fall).toBeGreaterThan(MOVED_BY);
    expect(compared?.moved.join("; ")).toMatch(/fell from \d+ % to \d+ %|the leader was/);
  });

  const line = (id: string, probability: number) => ({ id, name: id, probability });
  const played = (lead: [string, number], truth: [string, number, number]): PlayedCase => ({
    leader: line(...lead),
    truth: { ...line(truth[0], truth[1]), rank: truth[2] },
    leftOut: [],
  });

  test("a new leader, a leader and a true part that moved are each said; less than the bar is not", () => {
    const before = played(["a", 0.5], ["b", 0.3, 2]);
    expect(whatMoved(before, played(["a", 0.549], ["b", 0.251, 2]))).toEqual([]);
    expect(whatMoved(before, played(["a", 0.6], ["b", 0.3, 2]))).toEqual([
      "the leader, a, rose from 50 % to 60 %",
    ]);
    expect(whatMoved(before, played(["b", 0.52], ["b", 0.52, 1]))).toEqual([
      "the leader was a (50 %), now it is b (52 %)",
      "the true part, b, rose from 30 % to 52 %, number 2 before and number 1 now",
    ]);
    const led = played(["a", 0.9], ["a", 0.9, 1]);
    expect(whatMoved(led, played(["a", 0.7], ["a", 0.7, 1]))).toEqual([
      "the leader, a, fell from 90 % to 70 %",
    ]);
    expect(whatMoved(played(["a", 0.9], ["b", 0, 0]), played(["a", 0.9], ["b", 0.06, 4]))).toEqual([
      "the true part, b, rose from 0.0 % to 6 %, not listed before and number 4 now",
    ]);
  });
});

describe("the shipped worked cases", () => {
  const shipped = readKnowledge(shippedFiles()).workedCases;

  test("the shipped knowledge knows every word of them, and holds the true part of each for possible", () => {
    expect(shipped.length).toBeGreaterThanOrEqual(20);
    for (const worked of shipped) {
      const played = playWorkedCase(shippedKnowledge(), worked);
      expect(played.leftOut, worked.id).toEqual([]);
      expect(played.truth.rank, worked.id).toBeGreaterThan(0);
    }
  });

  test("the first release can still be asked about them", () => {
    const first = parseRelease(
      readFileSync(join(import.meta.dirname, "../../knowledge/releases/0.1.0/compiled.json"), "utf8"),
    );
    for (const { after } of compareCases(first, first, shipped)) expect(after.truth.rank).toBeGreaterThan(0);
  });
});
