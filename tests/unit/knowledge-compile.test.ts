import { expect, test } from "vitest";
import { CornerwiseError } from "../../lib/errors.ts";
import { compileKnowledge } from "../../lib/knowledge/compile.ts";
import type { KnowledgeProblem } from "../../lib/knowledge/problems.ts";
import { readKnowledge } from "../../lib/knowledge/read.ts";
import { Knowledge } from "../../lib/knowledge/schema/compiled.ts";
import { patch, type TinyChange, tinyFiles, tinyKnowledge } from "../support/tiny-knowledge.ts";

function refused(change: TinyChange): { code: string; problems: KnowledgeProblem[] } {
  const authored = readKnowledge(tinyFiles(change));
  try {
    compileKnowledge(authored);
  } catch (error) {
    if (!(error instanceof CornerwiseError)) throw error;
    return { code: error.code, problems: error.details.problems as KnowledgeProblem[] };
  }
  throw new Error("the compiler accepted it");
}

function fault(knowledge: Knowledge, id: string) {
  const found = knowledge.faults.find((candidate) => candidate.id === id);
  if (found === undefined) throw new Error(`no fault ${id}`);
  return found;
}

test("the compiled form follows its schema and gains nothing by being read again", () => {
  const { knowledge } = tinyKnowledge();
  expect(Knowledge.parse(knowledge)).toEqual(knowledge);
});

test("a profile is folded into a showing, and the showing's own features go before it", () => {
  const { knowledge } = tinyKnowledge((records) => {
    records["features/clunk.json"] = {
      ...records["features/small-bumps.json"],
      id: "clunk",
      name: "a clunk",
    };
    patch(records, "profiles/bump-knock.json", { features: { "small-bumps": "usually", clunk: "often" } });
    patch(records, "faults/rack-worn.json", {
      shows: [{ complaint: "noise", strength: "often", profile: "bump-knock", features: { clunk: 0.9 } }],
    });
  });
  expect(fault(knowledge, "rack-worn").shows).toEqual([
    {
      complaint: "noise",
      strength: { p: 0.6, spread: 0.4, basis: "common-practice" },
      features: { "small-bumps": 0.75, clunk: 0.9 },
    },
  ]);
});

test("words become numbers with the word's spread; a bare number takes the spread of the nearest word", () => {
  const { knowledge } = tinyKnowledge((records) => {
    patch(records, "faults/rack-worn.json", {
      links: {
        "rack-play": { s: "rarely", spread: 1.5 },
        "joint-play": { levels: [0.1, "rarely"], basis: "annex" },
      },
      decisive: [],
    });
  });
  expect(fault(knowledge, "rack-worn").links).toEqual([
    {
      observation: "joint-play",
      levels: [
        // log-odds of 0.1 is -2.20, of rarely (0.07) -2.59, of often (0.6) +0.41: rarely is nearest.
        { p: 0.1, spread: 0.6, basis: "annex" },
        { p: 0.07, spread: 0.6, basis: "annex" },
      ],
    },
    { observation: "rack-play", levels: [{ p: 0.07, spread: 1.5, basis: "common-practice" }] },
  ]);
});

test("the nearest basis counts: the strength's own, then the link's or showing's, then the fault's", () => {
  const { knowledge } = tinyKnowledge((records) => {
    patch(records, "faults/rack-worn.json", {
      basis: "annex",
      shows: [
        { complaint: "noise", strength: "often", basis: "common-practice" },
        { complaint: "noise", strength: { s: "often", basis: "annex" }, basis: "common-practice" },
      ],
    });
  });
  const compiled = fault(knowledge, "rack-worn");
  expect(compiled.shows.map((showing) => showing.strength.basis)).toEqual(["common-practice", "annex"]);
});

test("place sets become place ids in the order of places.json, each once", () => {
  const { knowledge } = tinyKnowledge((records) => {
    patch(records, "parts/ball-joint.json", { at: ["front-corners", "front-axle", "front-corners"] });
  });
  const part = knowledge.parts.find(({ id }) => id === "ball-joint");
  expect(part?.places).toEqual(["front-left", "front-right", "front"]);
  expect(part).not.toHaveProperty("at");
});

test("an observation gets a leak for each grade and one grade when it is a plain yes or no", () => {
  const { knowledge } = tinyKnowledge((records) =>
    patch(records, "observations/joint-play.json", { leak: 0.01 }),
  );
  const [graded, plain] = knowledge.observations;
  expect(graded).toMatchObject({ id: "joint-play", levels: ["slight", "clear"], leak: [0.01, 0.01] });
  expect(plain).toMatchObject({ id: "link-play", levels: ["present"], leak: [0.002] });
});

test("a decisive finding becomes the index of its grade", () => {
  const { knowledge } = tinyKnowledge();
  expect(fault(knowledge, "ball-joint-worn").decisive).toEqual([{ observation: "joint-play", level: 1 }]);
  expect(fault(knowledge, "rack-worn").decisive).toEqual([{ observation: "rack-play", level: 0 }]);
});

test("an unlisted feature's chance is the general share of its background, unless it has its own", () => {
  const { knowledge } = tinyKnowledge((records) =>
    patch(records, "features/from-left.json", { unlisted: 0.03 }),
  );
  const unlisted = new Map(knowledge.features.map((feature) => [feature.id, feature.unlisted]));
  expect(unlisted.get("small-bumps")).toBeCloseTo(0.3 * 0.5, 12);
  expect(unlisted.get("from-left")).toBe(0.03);
});

test("an ended record is left out; naming it is an error that says what took its place", () => {
  const ended = { since: "0.2.0", reason: "Split.", instead: ["link-play"] };
  const change: TinyChange = (records) => {
    records["observations/old-play.json"] = {
      ...records["observations/link-play.json"],
      id: "old-play",
      ended,
    };
  };
  expect(tinyKnowledge(change).knowledge.observations.map(({ id }) => id)).not.toContain("old-play");
  const { code, problems } = refused((records) => {
    change(records);
    patch(records, "checks/feel-link.json", { settles: ["link-play", "old-play"] });
  });
  expect(code).toBe("unknown-id");
  expect(problems).toMatchObject([{ file: "checks/feel-link.json", mend: 'Name "link-play".' }]);
});

test("an ended record must lead to one that is in use, not nowhere and not in a circle", () => {
  const ended = (instead: string[]) => ({ since: "0.2.0", reason: "Split.", instead });
  const { code, problems } = refused((records) => {
    const like = records["observations/link-play.json"];
    records["observations/lost.json"] = { ...like, id: "lost", ended: ended(["nowhere"]) };
    records["observations/there.json"] = { ...like, id: "there", ended: ended(["back"]) };
    records["observations/back.json"] = { ...like, id: "back", ended: ended(["there"]) };
    records["observations/fine.json"] = { ...like, id: "fine", ended: ended(["finer"]) };
    records["observations/finer.json"] = { ...like, id: "finer", ended: ended(["link-play"]) };
    records["observations/over.json"] = { ...like, id: "over", ended: ended([]) };
  });
  expect(code).toBe("unknown-id");
  expect(problems.map(({ file }) => file)).toEqual([
    "observations/back.json",
    "observations/lost.json",
    "observations/there.json",
  ]);
});

test("every unresolved id is told at once, whatever kind it is of", () => {
  const { code, problems } = refused((records) => {
    patch(records, "faults/rack-worn.json", {
      part: "no-part",
      basis: "no-source",
      contexts: { "no-context": 2 },
      shows: [
        {
          complaint: "no-complaint",
          strength: "no-word",
          profile: "no-profile",
          features: { "no-feature": 0.5 },
        },
      ],
      links: { "no-observation": "often" },
      remedy: {
        work: "Renew it.",
        minutes: 5,
        cautions: ["no-caution"],
        paired: [{ part: "no-pair", where: "same-place", why: "x" }],
      },
      inseparable: [{ fault: "no-fault", why: "x" }],
    });
    patch(records, "parts/rack.json", { at: "no-set" });
    patch(records, "checks/watch-rack.json", { setUp: "no-set-up", notWhen: ["no-bar"] });
    patch(records, "features/small-bumps.json", { group: "no-group" });
    patch(records, "demo-cases/first.json", { truth: { fault: "bar-link-worn", place: "no-place" } });
  });
  expect(code).toBe("unknown-id");
  const named = problems.map(({ what }) => /"([^"]+)"/.exec(what)?.[1]);
  const wanted = [
    "part",
    "source",
    "context",
    "complaint",
    "word",
    "profile",
    "feature",
    "observation",
    "caution",
    "pair",
  ];
  wanted.push("fault", "set", "set-up", "bar", "group", "place");
  expect(named).toEqual(expect.arrayContaining(wanted.map((word) => `no-${word}`)));
});

test("names that objects bring with them are not frequency words, place sets or features", () => {
  const { problems } = refused((records) => {
    patch(records, "faults/rack-worn.json", { links: { "rack-play": "constructor" } });
    patch(records, "parts/rack.json", { at: "constructor" });
  });
  expect(problems.map(({ file }) => file).sort()).toEqual(["faults/rack-worn.json", "parts/rack.json"]);
});

test("grades that do not fit the observation are refused", () => {
  const { code, problems } = refused((records) => {
    patch(records, "faults/ball-joint-worn.json", {
      links: { "joint-play": "often" },
      decisive: ["joint-play"],
    });
    patch(records, "faults/rack-worn.json", {
      links: { "rack-play": { levels: ["often", "rarely"] } },
      decisive: ["rack-play:clear"],
    });
    patch(records, "observations/link-play.json", { leak: [0.1, 0.05] });
  });
  expect(code).toBe("bad-record");
  expect(problems.map(({ file, path }) => `${file} ${path}`).sort()).toEqual([
    "faults/ball-joint-worn.json decisive.0",
    "faults/ball-joint-worn.json links.joint-play",
    "faults/rack-worn.json decisive.0",
    "faults/rack-worn.json links.rack-play",
    "observations/link-play.json leak",
  ]);
});

test("a rule with an operator that is not allowed, or about something that a car has not, is refused", () => {
  const { code, problems } = refused((records) => {
    patch(records, "parts/rack.json", { when: { "+": [1, 1] } });
    patch(records, "checks/watch-rack.json", { when: { var: "colour" } });
  });
  expect(code).toBe("bad-logic");
  expect(problems.map(({ file }) => file)).toEqual(["parts/rack.json", "checks/watch-rack.json"]);
});
