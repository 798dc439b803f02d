import { describe, expect, it } from "vitest";
import { answerWeighRequest } from "../../lib/requests/weigh-request.ts";
import { readText, sidesByTraffic, type Traffic } from "../../lib/words/index.ts";
import { EXIT } from "../../lib/cli/command.ts";
import { runCommand } from "../support/run-command.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";

const knowledge = shippedKnowledge();
const ids = (text: string, traffic?: Traffic) => readText(knowledge, text, { traffic }).map((p) => p.finding);

// The nearside is the side by the kerb, the driver sits on the offside (usage of the British trade, from memory).
describe("sides by the traffic", () => {
  const told: readonly (readonly [text: string, onLeft: string, onRight: string])[] = [
    ["A knock from the nearside front wheel.", "noise:from-left", "noise:from-right"],
    ["The driver's side rear wheel knocks.", "noise:from-right", "noise:from-left"],
    ["It pulls to the kerb side.", "pull:pull-left", "pull:pull-right"],
    ["A hum from the passenger side.", "noise:from-left", "noise:from-right"],
    ["Offside rear: clear play at 12 and 6.", "play-12-6@rear-right", "play-12-6@rear-left"],
    ["NSF: clear play at 12 and 6.", "play-12-6@front-left", "play-12-6@front-right"],
  ];

  it("are left or right by the side that it keeps to", () => {
    for (const [text, onLeft, onRight] of told) {
      expect(ids(text, "left"), text).toContain(onLeft);
      expect(ids(text, "left"), text).not.toContain(onRight);
      expect(ids(text, "right"), text).toContain(onRight);
      expect(ids(text, "right"), text).not.toContain(onLeft);
    }
  });

  it("stay open while that is not known, and are named", () => {
    for (const [text, onLeft, onRight] of told) {
      expect(ids(text)).not.toContain(onLeft);
      expect(ids(text)).not.toContain(onRight);
      const sides = sidesByTraffic(knowledge, text);
      expect(sides).toHaveLength(1);
      for (const { words, from, to } of sides) expect(text.slice(from, to)).toBe(words);
    }
    expect(sidesByTraffic(knowledge, "The driver's side hums, the front left does not.")).toEqual([
      { words: "driver's side", from: 4, to: 17 },
    ]);
    expect(sidesByTraffic(knowledge, "The front left hums with a passenger in the back.")).toEqual([]);
  });

  it("carry the words in full", () => {
    const side = readText(knowledge, "The driver's side rear wheel knocks.", { traffic: "left" });
    expect(side.find((p) => p.finding === "noise:from-right")?.words).toContain("driver's side");
  });

  it("leave a text without such words as it is", () => {
    const text = "A hum from the front left, pulls to the right.";
    expect(readText(knowledge, text, { traffic: "right" })).toEqual(readText(knowledge, text));
  });

  it("are no kerb that was hit", () => {
    expect(ids("It pulls to the kerb side.")).toEqual(["pull"]);
    expect(ids("I kerbed the wheel.")).toEqual(["kerb-strike"]);
  });

  it("are read in a weigh request that says it", () => {
    const read = (traffic?: Traffic) =>
      answerWeighRequest(knowledge, { text: "A hum from the nearside.", traffic }).read.map((r) => r.finding);
    expect(read("left")).toContain("noise:from-left");
    expect(read("right")).toContain("noise:from-right");
    expect(read().filter((id) => id.includes(":from-"))).toEqual([]);
    expect(() => answerWeighRequest(knowledge, { text: "A hum.", traffic: "middle" })).toThrow(/traffic/);
  });
});

describe("cornerwise read --traffic", () => {
  it("reads the sides, and names what is open without it", async () => {
    const left = await runCommand(["read", "--traffic", "left", "A hum from the nearside."]);
    expect(left.code).toBe(EXIT.ok);
    expect(left.err).toBe("");
    expect(left.out).toContain('"noise:from-left"');
    const open = await runCommand(["read", "A hum from the nearside."]);
    expect(open.code).toBe(EXIT.ok);
    expect(open.out).not.toContain(":from-left");
    expect(open.err).toContain('"nearside"');
  });

  it("says what it takes", async () => {
    const wrong = await runCommand(["read", "--traffic", "up", "A hum."]);
    expect(wrong.code).toBe(EXIT.badUse);
    expect(wrong.err).toMatch(/"up".*left or right/);
  });
});
