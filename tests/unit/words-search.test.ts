import { describe, expect, it } from "vitest";
import { searchChecks, searchFindings, searchParts } from "../../lib/words/index.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";

const knowledge = shippedKnowledge();

describe("search", () => {
  it("finds every part by its own name first", () => {
    for (const part of knowledge.parts) {
      const found = searchParts(knowledge, part.name, 3).map((hit) => hit.id);
      expect(found, part.name).toContain(part.id);
    }
  });

  // US, UK and slang names of one part: common usage (no source).
  it.each([
    ["sway bar link", "anti-roll-bar-link"],
    ["drop link", "anti-roll-bar-link"],
    ["stabaliser link", "anti-roll-bar-link"],
    ["shock absorber", "front-damper"],
    ["ball joint", "lower-ball-joint"],
  ])("finds %s", (query, id) => {
    expect(searchParts(knowledge, query, 8).map((hit) => hit.id)).toContain(id);
  });

  it("finds complaints, features and checks, with a score from 0 to 1", () => {
    expect(searchFindings(knowledge, "vibration").map((hit) => hit.id)).toContain("shake");
    expect(searchFindings(knowledge, "speed bumps").map((hit) => hit.id)).toContain("humps");
    const [check] = knowledge.checks;
    expect(searchChecks(knowledge, check?.name ?? "", 3).map((hit) => hit.id)).toContain(check?.id);
    for (const hit of searchFindings(knowledge, "clunk")) {
      expect(hit.score).toBeGreaterThan(0);
      expect(hit.score).toBeLessThanOrEqual(1);
    }
  });

  it("gives nothing for nothing and never more than asked for", () => {
    expect(searchFindings(knowledge, "  ")).toEqual([]);
    expect(searchParts(knowledge, "zzzzqqqq")).toEqual([]);
    expect(searchFindings(knowledge, "e", 4).length).toBeLessThanOrEqual(4);
    expect(() => searchFindings(knowledge, "(".repeat(500))).not.toThrow();
  });
});
