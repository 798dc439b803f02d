import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { coverageOf } from "../../lib/knowledge/health/coverage.ts";
import { inseparablePairs } from "../../lib/knowledge/health/inseparable-pairs.ts";
import { type Reach, readReach, weakestFaults } from "../../lib/knowledge/health/reach.ts";
import { unsourcedLinks } from "../../lib/knowledge/health/unsourced-links.ts";
import { shippedFiles, shippedKnowledge } from "../support/shipped-knowledge.ts";
import { patch, tinyKnowledge } from "../support/tiny-knowledge.ts";

describe("coverage", () => {
  test("counts what the tiny knowledge holds, counted by hand", () => {
    expect(coverageOf(tinyKnowledge().knowledge)).toEqual({
      parts: 3,
      faults: 3,
      complaints: 1,
      features: 5,
      observations: 3,
      contexts: 1,
      checks: 3,
      families: [{ complaint: "noise", name: "a noise", parts: 3, faults: 3, features: 5, checks: 3 }],
      withoutDecisiveCheck: [],
      // Drawn are bar-link and ball-joint only.
      withoutShape: ["rack"],
    });
  });

  test("a fault whose decisive finding no check settles is named", () => {
    const { knowledge } = tinyKnowledge((records) => {
      delete records["checks/watch-rack.json"];
    });
    expect(coverageOf(knowledge).withoutDecisiveCheck).toEqual(["rack-worn"]);
  });

  test("counts of the shipped knowledge are those of its files", () => {
    const files = [...shippedFiles()];
    // By looking for "ended" in the text: another way than the reader's.
    const live = (folder: string) =>
      files.filter(([path, text]) => path.startsWith(`${folder}/`) && !/^ {2}"ended"/m.test(text)).length;
    const found = coverageOf(shippedKnowledge());
    expect(found.parts).toBe(live("parts"));
    expect(found.faults).toBe(live("faults"));
    expect(found.checks).toBe(live("checks"));
    expect(found.observations).toBe(live("observations"));
    expect(found.families.map(({ complaint }) => complaint)).toContain("noise");
    for (const family of found.families) expect(family.faults, family.complaint).toBeGreaterThan(0);
  });
});

describe("links without a source", () => {
  test("are counted by part; a link with a source is not among them", () => {
    // Two of the three links to observations name the invented annex; no showing names a source.
    expect(unsourcedLinks(tinyKnowledge().knowledge)).toEqual([
      {
        part: "ball-joint",
        links: 2,
        unsourced: 1,
        faults: [{ fault: "ball-joint-worn", findings: ["noise"] }],
      },
      {
        part: "bar-link",
        links: 2,
        unsourced: 2,
        faults: [{ fault: "bar-link-worn", findings: ["noise", "link-play"] }],
      },
      { part: "rack", links: 2, unsourced: 1, faults: [{ fault: "rack-worn", findings: ["noise"] }] },
    ]);
  });

  test("one grade without a source makes the link one", () => {
    const { knowledge } = tinyKnowledge((records) =>
      patch(records, "faults/ball-joint-worn.json", {
        links: { "joint-play": { levels: ["usually", { s: "often", basis: "annex" }] } },
      }),
    );
    const joint = unsourcedLinks(knowledge).find(({ part }) => part === "ball-joint");
    expect(joint?.faults[0]?.findings).toEqual(["noise", "joint-play"]);
  });
});

describe("reach", () => {
  const faults = [
    { fault: "a", cars: 10, right: 9, minutes: 20 },
    { fault: "b", cars: 5, right: 1, minutes: 10 },
    { fault: "c", cars: 10, right: 2, minutes: 30 },
    { fault: "d", cars: 4, right: 4, minutes: 5 },
  ];
  const reach: Reach = { about: "Invented.", knowledge: "1.0.0", seeds: 29, faults };

  test("the weakest faults are those below the bar, worst first, slower first when equal", () => {
    expect(weakestFaults(reach, 0.9).map(({ fault, share }) => [fault, share])).toEqual([
      ["c", 0.2],
      ["b", 0.2],
    ]);
    expect(weakestFaults(reach, 1).map(({ fault }) => fault)).toEqual(["c", "b", "a"]);
  });

  test("the file is read, and refused when it is no measurement", () => {
    expect(readReach(JSON.stringify(reach))).toEqual(reach);
    expect(() => readReach("{")).toThrow(/not JSON/);
    expect(() => readReach(JSON.stringify({ ...reach, seeds: 0 }))).toThrow(/seeds/);
  });

  const file = join(import.meta.dirname, "../../knowledge/measured/reach.json");
  test.runIf(existsSync(file))(
    "the measured file reads, and no more cases were right than were played",
    () => {
      const measured = readReach(readFileSync(file, "utf8"));
      expect(measured.faults.filter(({ right, cars }) => right > cars)).toEqual([]);
    },
  );
});

describe("inseparable pairs", () => {
  test("the tiny faults are all told apart", () => {
    expect(inseparablePairs(tinyKnowledge().knowledge)).toEqual([]);
  });

  test("two faults with nearly the same findings are one pair, with the greatest factor and what tells them otherwise", () => {
    const { knowledge } = tinyKnowledge((records) => {
      records["faults/rack-loose.json"] = {
        ...records["faults/rack-worn.json"],
        id: "rack-loose",
        name: "loose",
        links: { "rack-play": 0.6 },
        inseparable: [{ fault: "rack-worn", why: "Both are play in the rack." }],
      };
    });
    const [pair, ...more] = inseparablePairs(knowledge);
    expect(more).toEqual([]);
    expect(pair).toMatchObject({
      faults: ["rack-loose", "rack-worn"],
      places: ["front", "front"],
      complaints: ["noise"],
      why: "Both are play in the rack.",
    });
    // By hand: absent (1 - 0.6) / (1 - 0.8) = 2, the leak cancels; present 0.8012 / 0.6012 = 1.33 is less.
    expect(pair?.factor).toBeCloseTo(2, 10);
  });
});
