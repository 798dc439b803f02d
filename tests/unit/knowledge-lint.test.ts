import { expect, test } from "vitest";
import { LINT_RULES, lintKnowledge } from "../../lib/knowledge/lint/index.ts";
import { readExceptions } from "../../lib/knowledge/lint/exceptions.ts";
import { readKnowledge } from "../../lib/knowledge/read.ts";
import { LAY_BREAKS, layTry } from "../support/lay-breaks.ts";
import { plainLimits } from "../support/plain-limits.ts";
import { plainOrders } from "../support/plain-orders.ts";
import { patch, type TinyChange, tinyFiles, tinyKnowledge } from "../support/tiny-knowledge.ts";

const { shafts: wheels, findings: orderFindings } = plainOrders("link-play");
const [firstOrder] = orderFindings;
const { quantities: plays, limits: limitRecords } = plainLimits("joint-play");
const [flat] = limitRecords;

/** For each rule: what breaks the tiny knowledge, and the record that the rule then names. */
const BREAKS: Record<string, [TinyChange, string][]> = {
  ...LAY_BREAKS,
  "finding-ids-unique": [
    [
      (records) => {
        records["contexts/noise.json"] = {
          id: "noise",
          name: "noise at the garage",
          question: "Was there noise?",
          share: 0.1,
        };
        patch(records, "faults/rack-worn.json", { contexts: { noise: 2 } });
      },
      "contexts/noise.json",
    ],
  ],
  "names-unique": [
    [
      (records) => patch(records, "checks/pry-joint.json", { name: "Feel the bar-link" }),
      "checks/pry-joint.json",
    ],
    [(records) => patch(records, "parts/rack.json", { otherNames: ["Drop link"] }), "parts/rack.json"],
    [
      (records) => {
        records["faults/rack-old.json"] = { ...records["faults/rack-worn.json"], id: "rack-old" };
      },
      "faults/rack-worn.json",
    ],
  ],
  "no-orphans": [
    [
      (records) => {
        records["parts/horn.json"] = { ...records["parts/rack.json"], id: "horn", name: "horn" };
      },
      "parts/horn.json",
    ],
    [
      (records) => {
        records["cautions/dust.json"] = { id: "dust", text: "Do not breathe it.", covers: ["dust"] };
      },
      "cautions/dust.json",
    ],
    [
      (records) => {
        records["sources/paper.json"] = { ...records["sources/annex.json"], id: "paper", title: "A paper" };
      },
      "sources/paper.json",
    ],
    [(records) => patch(records, "faults/bar-link-worn.json", { contexts: {} }), "contexts/kerb-strike.json"],
    [
      (records) => {
        records["profiles/spare.json"] = {
          ...records["profiles/bump-knock.json"],
          id: "spare",
          name: "spare",
        };
      },
      "profiles/spare.json",
    ],
    [
      (records) => {
        records["complaints/shake.json"] = {
          ...records["complaints/noise.json"],
          id: "shake",
          name: "a shake",
        };
      },
      "complaints/shake.json",
    ],
    [
      (records) => {
        records["features/wet.json"] = {
          ...records["features/small-bumps.json"],
          id: "wet",
          name: "when wet",
        };
      },
      "features/wet.json",
    ],
  ],
  "logic-values": [
    [
      (records) => patch(records, "parts/rack.json", { when: { "!=": [{ var: "front.layout" }, "struts"] } }),
      "parts/rack.json",
    ],
    [
      (records) =>
        patch(records, "parts/rack.json", { when: { in: [{ var: "place.axle" }, ["front", "rare"]] } }),
      "parts/rack.json",
    ],
  ],
  "features-fit": [
    [
      (records) => {
        records["complaints/shake.json"] = {
          ...records["complaints/noise.json"],
          id: "shake",
          name: "a shake",
        };
        patch(records, "faults/rack-worn.json", {
          shows: [{ complaint: "shake", strength: "often", features: { "small-bumps": "often" } }],
        });
      },
      "faults/rack-worn.json",
    ],
    [
      (records) => patch(records, "features/from-left.json", { mirror: "from-rear" }),
      "features/from-left.json",
    ],
  ],
  "grades-fall": [
    [
      (records) =>
        patch(records, "faults/ball-joint-worn.json", {
          links: { "joint-play": { levels: ["often", "usually"] } },
        }),
      "faults/ball-joint-worn.json",
    ],
    [
      (records) => patch(records, "observations/joint-play.json", { leak: [0.002, 0.02] }),
      "observations/joint-play.json",
    ],
    [
      (records) =>
        patch(records, "observations/joint-play.json", {
          measure: { quantity: "movement", unit: "mm", atLeast: [2, 2], basis: "common-practice" },
        }),
      "observations/joint-play.json",
    ],
  ],
  "set-ups-complete": [
    [
      (records) =>
        patch(records, "set-ups.json", {
          minutes: {
            standing: { standing: 0, road: 3, hanging: 4 },
            road: { standing: 2, road: 0 },
            hanging: { standing: 3, road: 6, hanging: 0 },
          },
        }),
      "set-ups.json",
    ],
  ],
  "paired-parts": [
    [
      (records) =>
        patch(records, "faults/rack-worn.json", {
          remedy: {
            work: "Renew it.",
            minutes: 9,
            paired: [{ part: "rack", where: "other-side", why: "Invented." }],
          },
        }),
      "faults/rack-worn.json",
    ],
  ],
  "severity-item": [
    [
      (records) =>
        patch(records, "faults/ball-joint-worn.json", {
          severity: { word: "dangerous", item: "5.3.4(a)", reason: "It can come apart.", basis: "annex" },
        }),
      "faults/ball-joint-worn.json",
    ],
    [
      (records) =>
        patch(records, "faults/ball-joint-worn.json", {
          severity: {
            word: "dangerous",
            item: "5.3.4 a",
            reason: "It can come apart.",
            basis: "common-practice",
          },
        }),
      "faults/ball-joint-worn.json",
    ],
  ],
  "dangerous-has-stop": [
    [
      (records) => patch(records, "faults/ball-joint-worn.json", { stop: undefined }),
      "faults/ball-joint-worn.json",
    ],
  ],
  "check-cautions": [
    [(records) => patch(records, "checks/pry-joint.json", { cautions: ["raise"] }), "checks/pry-joint.json"],
  ],
  "set-up-cautions": [
    [
      (records) => patch(records, "checks/feel-link.json", { does: [], cautions: [] }),
      "checks/feel-link.json",
    ],
    [(records) => patch(records, "checks/watch-rack.json", { setUp: "road" }), "checks/watch-rack.json"],
  ],
  "observation-has-fault": [
    [
      (records) => {
        records["observations/oil.json"] = {
          ...records["observations/link-play.json"],
          id: "oil",
          name: "oil",
        };
        patch(records, "checks/feel-link.json", { settles: ["link-play", "oil"] });
      },
      "observations/oil.json",
    ],
  ],
  "finding-learnable": [
    [
      (records) => {
        records["observations/oil.json"] = {
          ...records["observations/link-play.json"],
          id: "oil",
          name: "oil",
        };
        patch(records, "faults/bar-link-worn.json", { links: { "link-play": "usually", oil: "often" } });
      },
      "observations/oil.json",
    ],
    [
      (records) => patch(records, "features/small-bumps.json", { question: "Over small bumps." }),
      "features/small-bumps.json",
    ],
  ],
  "fault-findable": [
    // Strength 0.07 against a leak of 0.05.
    [
      (records) => {
        patch(records, "observations/rack-play.json", { leak: 0.05 });
        patch(records, "faults/rack-worn.json", { links: { "rack-play": "rarely" } });
      },
      "faults/rack-worn.json",
    ],
    // The check that finds it is not there on every car that can have the fault.
    [
      (records) =>
        patch(records, "checks/watch-rack.json", { when: { "==": [{ var: "front.layout" }, "strut"] } }),
      "faults/rack-worn.json",
    ],
    [(records) => patch(records, "faults/rack-worn.json", { when: false }), "faults/rack-worn.json"],
  ],
  "fault-has-decisive": [
    [(records) => patch(records, "faults/rack-worn.json", { decisive: [] }), "faults/rack-worn.json"],
  ],
  "decisive-proves": [
    [(records) => patch(records, "observations/rack-play.json", { leak: 0.2 }), "faults/rack-worn.json"],
    [
      (records) =>
        patch(records, "faults/ball-joint-worn.json", {
          links: { "joint-play": { levels: ["usually", "often"] }, "link-play": "often" },
        }),
      "faults/bar-link-worn.json",
    ],
    [
      (records) => patch(records, "faults/rack-worn.json", { decisive: ["rack-play", "link-play"] }),
      "faults/rack-worn.json",
    ],
  ],
  "faults-told-apart": [
    [
      (records) => {
        patch(records, "faults/bar-link-worn.json", {
          links: { "joint-play": { levels: ["usually", "often"] } },
        });
      },
      "faults/ball-joint-worn.json",
    ],
  ],
  "inseparable-needed": [
    [
      (records) =>
        patch(records, "faults/rack-worn.json", {
          inseparable: [{ fault: "ball-joint-worn", why: "Invented." }],
        }),
      "faults/rack-worn.json",
    ],
  ],
  "layouts-fit": [
    [(records) => patch(records, "layouts/strut.json", { attribute: "struts" }), "layouts/strut.json"],
    [
      (records) => {
        delete records["layouts/wishbone.json"];
      },
      "car.json",
    ],
  ],
  "orders-fit": [
    [(records) => patch(records, "orders.json", { shafts: [...wheels, ...wheels] }), "orders.json"],
    [
      (records) => patch(records, "orders.json", { shafts: [{ ...wheels[0], orders: [1, 2, 1] }] }),
      "orders.json",
    ],
    [(records) => patch(records, "orders.json", { findings: [{ ...firstOrder, order: 3 }] }), "orders.json"],
    [
      (records) => patch(records, "orders.json", { findings: [{ ...firstOrder, order: "firing" }] }),
      "orders.json",
    ],
    [(records) => patch(records, "orders.json", { findings: [firstOrder, firstOrder] }), "orders.json"],
    [
      (records) =>
        patch(records, "orders.json", { findings: [{ ...firstOrder, observation: "joint-play" }] }),
      "orders.json",
    ],
  ],
  "limits-fit": [
    [
      (records) =>
        patch(records, "limits.json", {
          limits: [flat, { ...flat, id: "left", figure: { kind: "least", least: 2 } }],
        }),
      "limits.json",
    ],
    [
      (records) =>
        patch(records, "limits.json", {
          quantities: [{ ...plays[0], observation: "joint-play" }],
          limits: [{ ...flat, figure: { kind: "least", least: 2 } }],
        }),
      "limits.json",
    ],
    [
      (records) => {
        const { circle: _, ...bare } = plays[0] as Record<string, unknown>;
        patch(records, "limits.json", { quantities: [bare] });
      },
      "limits.json",
    ],
    [(records) => patch(records, "limits.json", { limits: [flat, flat] }), "limits.json"],
    [
      (records) =>
        patch(records, "limits.json", { limits: [flat, { ...flat, id: "other", quantity: "lash" }] }),
      "limits.json",
    ],
    [
      (records) =>
        patch(records, "limits.json", { quantities: [...plays, { ...plays[0], id: "without-limit" }] }),
      "limits.json",
    ],
    [
      (records) => patch(records, "limits.json", { quantities: [{ ...plays[0], observation: "rack-play" }] }),
      "limits.json",
    ],
    [
      (records) =>
        patch(records, "limits.json", {
          limits: [{ ...flat, figure: { kind: "steps", steps: [{ upTo: 400, most: 5 }], above: 4 } }],
        }),
      "limits.json",
    ],
    [
      (records) =>
        patch(records, "limits.json", {
          limits: [
            {
              ...flat,
              figure: {
                kind: "line",
                points: [
                  { at: 500, most: 5 },
                  { at: 400, most: 6 },
                ],
              },
            },
          ],
        }),
      "limits.json",
    ],
  ],
  "demo-cases-possible": [
    [
      (records) => patch(records, "demo-cases/first.json", { car: { front: { layout: "wishbone" } } }),
      "demo-cases/first.json",
    ],
  ],
  "worked-cases-possible": [
    [
      (records) => patch(records, "worked-cases/knock.json", { car: { front: { layout: "wishbone" } } }),
      "worked-cases/knock.json",
    ],
    [
      (records) =>
        patch(records, "worked-cases/knock.json", { findings: [{ id: "noise" }, { id: "link-play@front" }] }),
      "worked-cases/knock.json",
    ],
    [
      (records) =>
        patch(records, "worked-cases/knock.json", {
          findings: [{ id: "noise" }, { id: "joint-play@front-left", level: "broken" }],
        }),
      "worked-cases/knock.json",
    ],
    [
      (records) => {
        delete records["worked-cases/knock.json"];
      },
      "complaints/noise.json",
    ],
  ],
};

/** Rules whose breach the compiler refuses: shown with the compiled form of the sound records. */
const BREAKS_BEFORE_COMPILING: Record<string, [TinyChange, string][]> = {
  "ids-resolve": [
    [
      (records) =>
        patch(records, "orders.json", { findings: [{ ...firstOrder, observation: "no-such-order" }] }),
      "orders.json",
    ],
    [
      (records) =>
        patch(records, "limits.json", { quantities: [{ ...plays[0], observation: "no-such-play" }] }),
      "limits.json",
    ],
    [
      (records) => patch(records, "limits.json", { limits: [{ ...flat, when: { var: "colour" } }] }),
      "limits.json",
    ],
    [
      (records) => patch(records, "faults/rack-worn.json", { links: { "no-such-play": "often" } }),
      "faults/rack-worn.json",
    ],
    [
      (records) => patch(records, "parts/rack.json", { when: { "==": [{ var: "colour" }, "red"] } }),
      "parts/rack.json",
    ],
    [
      (records) =>
        patch(records, "observations/rack-play.json", {
          ended: { since: "0.2.0", reason: "Split.", instead: ["link-play"] },
        }),
      "faults/rack-worn.json",
    ],
    [
      (records) =>
        patch(records, "parts/rack.json", { ended: { since: "0.2.0", reason: "Moved.", instead: ["rack"] } }),
      "parts/rack.json",
    ],
  ],
  "sources-exist": [
    [(records) => patch(records, "limits.json", { limits: [{ ...flat, basis: "hearsay" }] }), "limits.json"],
    [
      (records) => patch(records, "orders.json", { findings: [{ ...firstOrder, basis: "hearsay" }] }),
      "orders.json",
    ],
    [(records) => patch(records, "faults/rack-worn.json", { basis: "hearsay" }), "faults/rack-worn.json"],
  ],
};

test("the tiny knowledge gives the lint nothing to say", () => {
  const { knowledge, authored } = tinyKnowledge();
  expect(lintKnowledge(knowledge, authored)).toEqual([]);
});

test("a check that an owner may try has nothing wrong with it", () => {
  const { knowledge, authored } = tinyKnowledge(layTry({}));
  expect(lintKnowledge(knowledge, authored).filter(({ rule }) => rule.startsWith("lay-"))).toEqual([]);
});

test("every rule has a test that breaks it", () => {
  const tested = [...Object.keys(BREAKS), ...Object.keys(BREAKS_BEFORE_COMPILING)];
  expect(tested.sort()).toEqual(LINT_RULES.map((rule) => rule.name).sort());
});

for (const [rule, breaks] of Object.entries(BREAKS)) {
  breaks.forEach(([change, record], i) => {
    test(`${rule} fires on its breach ${i + 1}, in ${record}`, () => {
      const { knowledge, authored } = tinyKnowledge(change);
      const fired = lintKnowledge(knowledge, authored).filter((problem) => problem.rule === rule);
      expect(fired.map((problem) => problem.record)).toContain(record);
      for (const problem of fired) expect(problem.mend).toMatch(/\.$/);
    });
  });
}

for (const [rule, breaks] of Object.entries(BREAKS_BEFORE_COMPILING)) {
  breaks.forEach(([change, record], i) => {
    test(`${rule} fires on its breach ${i + 1}, in ${record}`, () => {
      const report = lintKnowledge(tinyKnowledge().knowledge, readKnowledge(tinyFiles(change)));
      const fired = report.filter((problem) => problem.rule === rule);
      expect(fired.map((problem) => problem.record)).toContain(record);
    });
  });
}

test("a pair that no check tells apart is accepted when it is listed as inseparable", () => {
  const { knowledge, authored } = tinyKnowledge((records) => {
    patch(records, "faults/bar-link-worn.json", {
      links: { "joint-play": { levels: ["usually", "often"] } },
      decisive: ["joint-play:clear"],
      inseparable: [{ fault: "ball-joint-worn", why: "Invented." }],
    });
  });
  const rules = lintKnowledge(knowledge, authored).map((problem) => problem.rule);
  expect(rules).not.toContain("faults-told-apart");
  expect(rules).not.toContain("inseparable-needed");
});

function told(change: TinyChange): string[] {
  const { knowledge, authored } = tinyKnowledge(change);
  const problems = lintKnowledge(knowledge, authored).filter(({ rule }) => rule === "faults-told-apart");
  return problems.map(({ record, message }) => `${record}: ${message}`);
}

test("one fault at two places needs a check that says at which", () => {
  // What is seen at the axle does not say which side.
  const found = told((records) =>
    patch(records, "faults/bar-link-worn.json", { links: { "rack-play": "often" } }),
  );
  expect(found).toContainEqual(
    "faults/bar-link-worn.json: no check tells it (at front-left) from bar-link-worn (at front-right); both show noise",
  );
});

test("an observation tells faults apart only where a check settles it, on that car", () => {
  const onlyOn = (layout: string) => ({ "==": [{ var: "front.layout" }, layout] });
  const change =
    (layout: string): TinyChange =>
    (records) => {
      patch(records, "faults/ball-joint-worn.json", {
        links: { "link-play": "usually", "joint-play": { levels: ["usually", "often"] } },
      });
      patch(records, "checks/pry-joint.json", { when: onlyOn(layout) });
    };
  // The bar link is there on struts only, so that the check must be possible on struts.
  expect(told(change("strut"))).toEqual([]);
  expect(told(change("wishbone"))).toEqual([
    expect.stringMatching(/^faults\/ball-joint-worn\.json: .* from bar-link-worn /),
  ]);
});

test("a check settles an observation where it is made, and elsewhere only when it cannot be seen there", () => {
  const blind = (at: string) => {
    const { knowledge, authored } = tinyKnowledge((records) => {
      patch(records, "places.json", {
        sets: {
          "front-corners": ["front-right", "front-left"],
          "front-axle": ["front"],
          "front-all": ["front", "front-left", "front-right"],
          car: ["car"],
        },
      });
      patch(records, "observations/rack-play.json", { at });
    });
    return lintKnowledge(knowledge, authored)
      .filter(({ rule }) => rule === "finding-learnable")
      .map(({ message }) => message);
  };
  // The rack is watched at the axle: corners within it are settled unless the axle itself can be observed.
  expect(blind("front-corners")).toEqual([]);
  expect(blind("front-all")).toEqual(["no check settles it at front-left, front-right"]);
});

test("faults that cannot sit on one car need not be told apart", () => {
  const found = told((records) => {
    patch(records, "faults/bar-link-worn.json", {
      links: { "joint-play": { levels: ["usually", "often"] } },
    });
    patch(records, "parts/ball-joint.json", { when: { "==": [{ var: "front.layout" }, "wishbone"] } });
  });
  expect(found).toEqual([]);
});

test("an exception takes out its problem, and is a problem itself once it takes out nothing", () => {
  const exceptions = readExceptions(
    JSON.stringify([
      { rule: "fault-has-decisive", record: "faults/rack-worn.json", why: "An invented reason." },
    ]),
  );
  const broken = tinyKnowledge((records) => patch(records, "faults/rack-worn.json", { decisive: [] }));
  expect(lintKnowledge(broken.knowledge, broken.authored, exceptions)).toEqual([]);
  const sound = tinyKnowledge();
  expect(lintKnowledge(sound.knowledge, sound.authored, exceptions)).toMatchObject([
    { rule: "exception-needed", record: "lint-exceptions.json" },
  ]);
});

test("exceptions without a reason, or that are no list, are refused", () => {
  expect(() => readExceptions('[{"rule":"a","record":"b"}]')).toThrow(/why/);
  expect(() => readExceptions("{}")).toThrow(/list/);
  expect(() => readExceptions("[")).toThrow(/not JSON/);
});
