import { describe, expect, it } from "vitest";
import {
  byStrength,
  checkPage,
  checksIndex,
  findingIds,
  findingPage,
  findingsIndex,
  partPage,
  partsIndex,
  strengthWords,
} from "../../lib/knowledge/pages/index.ts";
import { carNeeds } from "../../lib/knowledge/pages/car-limits.ts";
import { figureWords, limitsOf } from "../../lib/knowledge/pages/limits-of.ts";
import { wearCurve } from "../../lib/knowledge/pages/wear-curve.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";
import { patch, tinyKnowledge } from "../support/tiny-knowledge.ts";

const knowledge = shippedKnowledge();
const tiny = tinyKnowledge().knowledge;

describe("strength in words", () => {
  it("gives every word of the scale back for its own figure", () => {
    for (const [word, { p }] of Object.entries(knowledge.scale.words))
      expect(strengthWords(knowledge, p)).toBe(word.replaceAll("-", " "));
  });

  // Brute force: the nearest of three words by the odds ratio, done by hand. ln(0.6/0.4) = 0.405, ln(0.75/0.25) = 1.099,
  // ln(0.07/0.93) = -2.587; 0.7 is at 0.847, 0.3 at -0.847 and 0.2 at -1.386.
  it.each([
    [0.7, "usually"],
    [0.3, "often"],
    [0.2, "rarely"],
  ])("calls %d %s on a scale of three words", (p, word) => {
    expect(strengthWords(tiny, p)).toBe(word);
  });
});

describe("the wear curve", () => {
  // NIST/SEMATECH e-Handbook 8.1.6.2: at the characteristic life 1 - 1/e = 63.2 % have failed, whatever the shape;
  // 1.3.6.6.8: the median is life * (ln 2)^(1 / shape); shape 1 is the exponential law.
  it.each([1, 1.8, 3, 5])(
    "has 63.2 %% failed at the characteristic life and half at the median, shape %d",
    (shape) => {
      const curve = wearCurve({ km: 150_000, shape, basis: "common-practice" });
      expect(curve?.points.find(({ at }) => at === 150_000)?.failed).toBeCloseTo(0.6321, 4);
      expect(1 - Math.exp(-(((curve?.half ?? 0) / 150_000) ** shape))).toBeCloseTo(0.5, 10);
    },
  );

  it("follows the exponential law at shape 1, in years", () => {
    const curve = wearCurve({ years: 10, shape: 1, basis: "common-practice" });
    expect(curve?.unit).toBe("years");
    for (const { at, failed } of curve?.rows ?? []) expect(failed).toBeCloseTo(1 - Math.exp(-at / 10), 10);
    expect(curve?.rows.map(({ at }) => at)).toEqual([5, 10, 15, 20, 25, 30]);
  });

  it("never falls, begins at nothing, ends on the axis, for every life of the knowledge", () => {
    let seen = 0;
    for (const { id, life } of knowledge.faults) {
      const curve = wearCurve(life);
      if (curve === undefined) {
        expect("share" in life, id).toBe(true);
        continue;
      }
      seen += 1;
      expect(curve.points[0]?.at, id).toBe(0);
      expect(curve.points[0]?.failed, id).toBeCloseTo(0, 12);
      expect(curve.points.at(-1)?.at, id).toBe(curve.until);
      curve.points.reduce((before, point) => {
        expect(point.failed, id).toBeGreaterThanOrEqual(before.failed);
        return point;
      });
    }
    expect(seen).toBeGreaterThan(100);
  });
});

describe("which cars have a record", () => {
  const places = ["front-left", "front-right"];
  const strut = { "==": [{ var: "front.layout" }, "strut"] };
  const namesOf = (when: unknown) =>
    carNeeds(knowledge, when, places).map((way) =>
      way.map(({ path, values }) => [path, values.map((v) => v.id)]),
    );

  it("says every car for no condition and for one that always holds", () => {
    expect(namesOf(undefined)).toEqual([]);
    expect(namesOf({ "!!": [{ var: "front.layout" }] })).toEqual([]);
  });

  it("lists the values that will do, also those that a condition leaves by ruling others out", () => {
    expect(namesOf(strut)).toEqual([[["front.layout", ["strut"]]]]);
    const others = namesOf({ "!=": [{ var: "front.layout" }, "strut"] })[0]?.[0]?.[1];
    const layouts = knowledge.car.attributes.find(({ path }) => path === "front.layout");
    const all = layouts?.kind === "choice" ? layouts.values.map(({ id }) => id) : [];
    expect(others).toEqual(all.filter((id) => id !== "strut"));
  });

  it("keeps both things that must hold, and both ways of which one is enough", () => {
    const driven = { in: [{ var: "drive" }, ["front", "all"]] };
    expect(namesOf({ and: [strut, driven] })).toEqual([
      [
        ["drive", ["front", "all"]],
        ["front.layout", ["strut"]],
      ],
    ]);
    expect(namesOf({ or: [strut, driven] })).toEqual([
      [["front.layout", ["strut"]]],
      [["drive", ["front", "all"]]],
    ]);
  });

  it("asks for nothing of a car when only the place decides", () => {
    expect(namesOf({ "==": [{ var: "place.axle" }, "front"] })).toEqual([]);
  });
});

describe("the page of a part", () => {
  it("is there for every part and says each of its faults once", () => {
    const faults = knowledge.parts.flatMap(
      ({ id }) => partPage(knowledge, id)?.faults.map((f) => f.fault.id) ?? [],
    );
    expect(faults.toSorted()).toEqual(knowledge.faults.map(({ id }) => id).toSorted());
    expect(partPage(knowledge, "no-such-part")).toBeUndefined();
  });

  it("leaves out nothing that a fault gives, proves first and falls in strength", () => {
    for (const part of knowledge.parts) {
      for (const { fault, seen, shown } of partPage(knowledge, part.id)?.faults ?? []) {
        expect(seen.map((s) => s.observation.id).toSorted(), fault.id).toEqual(
          fault.links.map((l) => l.observation).toSorted(),
        );
        expect(shown).toHaveLength(fault.shows.length);
        const keys = seen.map((s) => (s.provesFrom === undefined ? 0 : 1) + (s.grades[0]?.weight.p ?? 0));
        expect(keys, fault.id).toEqual(keys.toSorted((a, b) => b - a));
        const proving = new Set(fault.decisive.map(({ observation }) => observation));
        expect(seen.filter((s) => s.provesFrom !== undefined)).toHaveLength(proving.size);
      }
    }
  });

  it("names every feature that a showing lists, sided ones by where the part can be", () => {
    let sided = 0;
    for (const part of knowledge.parts) {
      for (const { fault, shown } of partPage(knowledge, part.id)?.faults ?? []) {
        const named = new Set(
          shown.flatMap((s) => s.features.map((f) => `${s.complaint.id} ${f.feature.id}`)),
        );
        const keys = fault.shows.flatMap((s) =>
          Object.keys(s.features).map((key) => `${s.complaint} ${key}`),
        );
        const plain = keys.filter((key) => knowledge.features.some(({ id }) => key.endsWith(` ${id}`)));
        expect([...named], fault.id).toEqual(expect.arrayContaining(plain));
        for (const { features } of shown) {
          sided += features.filter((f) => f.facet !== undefined).length;
          for (const { facet } of features) {
            if (facet === "front" || facet === "rear") {
              const axles = knowledge.places.places
                .filter(({ id }) => part.places.includes(id))
                .map((p) => p.axle);
              expect(axles, fault.id).toContain(facet);
            }
          }
        }
      }
    }
    expect(sided).toBeGreaterThan(0);
  });

  it("names the source of every weight, or says that there is none", () => {
    for (const part of knowledge.parts) {
      for (const { fault, sources } of partPage(knowledge, part.id)?.faults ?? []) {
        const named = new Set(sources.map(({ source }) => source.id));
        const bases = [
          fault.life.basis,
          fault.severity.basis,
          ...fault.shows.map((s) => s.strength.basis),
          ...fault.links.flatMap((l) => l.levels.map(({ basis }) => basis)),
        ];
        expect([...named].toSorted(), fault.id).toEqual([...new Set(bases)].toSorted());
      }
    }
  });

  it("says so when a decisive finding is changed", () => {
    const fault = tiny.faults.find(({ decisive }) => decisive.length > 0);
    const before = partPage(tiny, fault?.part ?? "")?.faults.find((f) => f.fault.id === fault?.id);
    const { knowledge: changed } = tinyKnowledge((records) =>
      patch(records, `faults/${fault?.id}.json`, { decisive: [] }),
    );
    const after = partPage(changed, fault?.part ?? "")?.faults.find((f) => f.fault.id === fault?.id);
    expect(before?.seen.some((s) => s.provesFrom !== undefined)).toBe(true);
    expect(after?.seen.some((s) => s.provesFrom !== undefined)).toBe(false);
  });
});

describe("the pages of checks and findings", () => {
  it("lists the same links from the finding's end as from the fault's", () => {
    const fromFindings = knowledge.observations.flatMap(({ id }) => {
      const page = findingPage(knowledge, id);
      return page?.kind === "observation" ? page.causes.map(({ fault }) => `${fault.id} ${id}`) : [];
    });
    const fromFaults = knowledge.faults.flatMap(({ id, links }) =>
      links.map((l) => `${id} ${l.observation}`),
    );
    expect(fromFindings.toSorted()).toEqual(fromFaults.toSorted());
  });

  it("gives every finding a page of its kind, and nothing else one", () => {
    const ids = findingIds(knowledge);
    expect(new Set(ids).size).toBe(ids.length);
    for (const id of ids) expect(findingPage(knowledge, id)?.record.id).toBe(id);
    expect(findingPage(knowledge, "no-such-finding")).toBeUndefined();
  });

  it("lists on a complaint every fault that shows so, the strongest first", () => {
    for (const { id } of knowledge.complaints) {
      const page = findingPage(knowledge, id);
      const causes = page?.kind === "complaint" ? page.causes : [];
      const showing = knowledge.faults.filter(({ shows }) => shows.some((s) => s.complaint === id));
      expect(causes.map(({ fault }) => fault.id).toSorted(), id).toEqual(showing.map((f) => f.id).toSorted());
      const chances = causes.map(({ weights }) => weights[0]?.p ?? 0);
      expect(chances, id).toEqual(chances.toSorted((a, b) => b - a));
    }
  });

  it("says of a check what it settles, what it can prove and every caution of it", () => {
    for (const { id, settles, cautions } of knowledge.checks) {
      const page = checkPage(knowledge, id);
      expect(
        page?.settles.map((s) => s.observation.id),
        id,
      ).toEqual(settles);
      expect(page?.cautions, id).toHaveLength(cautions.length);
      const provable = knowledge.faults.filter(({ decisive }) =>
        decisive.some(({ observation }) => settles.includes(observation)),
      );
      expect(page?.proves.map((f) => f.id).toSorted(), id).toEqual(provable.map((f) => f.id).toSorted());
    }
    expect(checkPage(knowledge, "no-such-check")).toBeUndefined();
  });
});

describe("the lists", () => {
  it("leave out no part, check or finding", () => {
    const parts = partsIndex(knowledge).flatMap(({ byLayout, byGroup }) =>
      [...byLayout, ...byGroup].flatMap((group) => group.parts.map(({ part }) => part.id)),
    );
    expect([...new Set(parts)].toSorted()).toEqual(knowledge.parts.map(({ id }) => id).toSorted());
    const checks = checksIndex(knowledge).flatMap((group) => group.checks.map(({ id }) => id));
    expect(checks.toSorted()).toEqual(knowledge.checks.map(({ id }) => id).toSorted());
    const { complaints, features, observations, contexts } = findingsIndex(knowledge);
    const findings = [
      ...complaints,
      ...features.flatMap((group) => group.findings),
      ...observations.flatMap((group) => group.findings),
      ...contexts,
    ].map(({ id }) => id);
    expect(findings.toSorted()).toEqual(findingIds(knowledge).toSorted());
  });

  it("put a part under each layout that has it and under no other", () => {
    const groups = partsIndex(knowledge).flatMap(({ byLayout }) => byLayout);
    expect(groups.length).toBeGreaterThan(5);
    for (const attribute of knowledge.car.attributes) {
      if (attribute.kind !== "choice" || !attribute.path.endsWith(".layout")) continue;
      for (const { id } of attribute.values) {
        const group = groups.find((g) => g.id === `${attribute.path.replace(".", "-")}-${id}`);
        for (const { part } of group?.parts ?? [])
          expect(JSON.stringify(part.when), part.id).toContain(attribute.path);
      }
    }
  });

  it("puts what is equally frequent together", () => {
    const groups = byStrength([0.2, 0.9, 0.2], (p) => p);
    expect(groups).toEqual([
      { p: 0.9, items: [0.9] },
      { p: 0.2, items: [0.2, 0.2] },
    ]);
  });
});

describe("limits in words", () => {
  // 49 CFR 570.7(b): a quarter of an inch; 570.7(a) table 1: 2 in at 16 in or less to 2 3/4 in at 22 in;
  // GB inspection manual of 2012, 2.2: 13 mm on a wheel of 380 mm; Missouri 11 CSR 50-2.200: 2 in up to 18 in, else 3 in;
  // 49 CFR 570.62(a): 4/32 in left on front tyres; 1.6 mm of tread in Great Britain, from a summary.
  it.each([
    ["us-linkage", "0.25 in"],
    [
      "us-steering-rim",
      "2 in at 16 in across or less, 2.25 in at 18 in across, 2.5 in at 20 in across, 2.75 in at 22 in across or more",
    ],
    ["gb-steering-rim-rack", "13 mm for every 380 mm across"],
    ["us-tread-heavy-front", "at least 0.125 in"],
    ["gb-tread", "at least 1.6 mm"],
    ["us-mo-steering-rim", "2 in up to 18 in across, 3 in above 18 in"],
  ])("says the figure of %s", (id, words) => {
    const limit = knowledge.limits.limits.find((l) => l.id === id);
    if (limit === undefined) throw new Error(`the knowledge has no limit ${id}`);
    expect(figureWords(limit)).toBe(words);
  });

  it("finds the limits of an observation by what it measures", () => {
    for (const { id, observation } of knowledge.limits.quantities) {
      const own = knowledge.limits.limits.filter(({ quantity }) => quantity === id);
      expect(limitsOf(knowledge, observation ?? "").map(({ limit }) => limit.id)).toEqual(
        expect.arrayContaining(observation === undefined ? [] : own.map((l) => l.id)),
      );
    }
  });
});
