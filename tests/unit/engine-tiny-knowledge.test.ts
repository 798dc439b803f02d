import { describe, expect, test } from "vitest";
import { standingChance } from "../../lib/car/standing-chance.ts";
import {
  type Answer,
  findingName,
  groundCar,
  previewResults,
  proposeChecks,
  rankingRows,
  stopSignal,
  weigh,
  weighing,
} from "../../lib/engine/index.ts";
import { patch, tinyKnowledge } from "../support/tiny-knowledge.ts";

/*
 * The numbers expected here are worked out in the test by plain formulas over the tiny, invented knowledge: noisy-OR,
 * Bayes by enumeration, tempered likelihoods. None is taken from what the engine prints.
 */
const { knowledge } = tinyKnowledge();
const strut = { front: { layout: "strut" }, odometerKm: 130_000, ageYears: 10 };

const report = (finding: string, state: Answer["state"] = "present"): Answer => ({
  finding,
  state,
  by: "report",
});
const check = (finding: string, state: Answer["state"] = "present", more: Partial<Answer> = {}): Answer => ({
  finding,
  state,
  by: "check",
  ...more,
});
const present = (answers: readonly Answer[], suspect: string, car: Record<string, unknown> = strut): number =>
  weigh(groundCar(knowledge, car), answers).ranking.find((r) => r.suspect.id === suspect)?.present ??
  Number.NaN;
const priorOf = (id: string, car: Record<string, unknown> = strut, contexts: string[] = []): number =>
  groundCar(knowledge, car, contexts).suspects.find((s) => s.id === id)?.prior ?? Number.NaN;

describe("priors", () => {
  test("a share is the prior, and an odds factor of something that happened moves its odds", () => {
    expect(priorOf("ball-joint-worn@front-left")).toBeCloseTo(0.03, 12);
    const before = priorOf("bar-link-worn@front-left");
    const after = priorOf("bar-link-worn@front-left", strut, ["kerb-strike"]);
    expect(after / (1 - after)).toBeCloseTo((1.5 * before) / (1 - before), 12);
  });

  test("an unknown layout is averaged over the cars on the road: 0.8 of the struts' chance, 0 of the wishbones'", () => {
    const known = priorOf("bar-link-worn@front-left");
    const unknown = priorOf("bar-link-worn@front-left", { odometerKm: 130_000 });
    expect(unknown).toBeCloseTo(0.8 * known, 12);
    expect(priorOf("bar-link-worn@front-left", { front: { layout: "wishbone" } })).toBeNaN();
  });

  test("the standing chance is the integral of the smaller of hazard and renewal rate, by numeric integration", () => {
    const meanLife = (life: number, shape: number): number => {
      // Mean of a Weibull life: integral of its survival, trapezoids far into the tail.
      const step = life / 20_000;
      let sum = 0.5;
      for (let k = 1; k < 200_000; k++) sum += Math.exp(-(((k * step) / life) ** shape));
      return sum * step;
    };
    for (const [age, stands, life, shape] of [
      [20_000, 12_000, 150_000, 2.5],
      [130_000, 12_000, 108_000, 2.5],
      [300_000, 40_000, 90_000, 3.2],
      [5_000, 12_000, 60_000, 1.5],
    ] as const) {
      const cap = 1 / meanLife(life, shape);
      const from = Math.max(0, age - stands);
      const steps = 100_000;
      let integral = 0;
      for (let k = 0; k < steps; k++) {
        const t = from + ((k + 0.5) * (age - from)) / steps;
        integral += (Math.min((shape / life) * (t / life) ** (shape - 1), cap) * (age - from)) / steps;
      }
      expect(standingChance(age, stands, life, shape)).toBeCloseTo(1 - Math.exp(-integral), 5);
    }
  });
});

describe("observations", () => {
  test("a told finding weighs by its reliability and false alarms, a checked one by its full strength", () => {
    const p = priorOf("bar-link-worn@front-left");
    const bayes = (w: number, leak: number): number => {
      const yes = 1 - (1 - leak) * (1 - w);
      return (p * yes) / (p * yes + (1 - p) * leak);
    };
    expect(present([check("link-play@front-left")], "bar-link-worn@front-left")).toBeCloseTo(
      bayes(0.75, 0.002),
      12,
    );
    const leak = 1 - (1 - 0.002) * (1 - 0.02);
    expect(present([report("link-play@front-left")], "bar-link-worn@front-left")).toBeCloseTo(
      bayes(0.75 * 0.75, leak),
      12,
    );
  });

  test("grades are nested: slight alone is at least slight and not clear, and each grade is Bayes on its own chance", () => {
    const p = 0.03;
    const s = [0.75, 0.6] as const;
    const leak = [0.02, 0.002] as const;
    const atMost = (level: number, there: boolean): number =>
      level > 1 ? 1 : (1 - (leak[level] ?? 0)) * (there ? 1 - (s[level] ?? 0) : 1);
    const bayes = (chance: (there: boolean) => number): number =>
      (p * chance(true)) / (p * chance(true) + (1 - p) * chance(false));
    const id = "ball-joint-worn@front-left";
    const of = (more: Partial<Answer>, state: Answer["state"] = "present"): number =>
      present([check("joint-play@front-left", state, more)], id);
    expect(of({ level: "clear" })).toBeCloseTo(
      bayes((f) => 1 - atMost(1, f)),
      10,
    );
    expect(of({ level: "slight" })).toBeCloseTo(
      bayes((f) => atMost(1, f) - atMost(0, f)),
      10,
    );
    expect(of({})).toBeCloseTo(
      bayes((f) => 1 - atMost(0, f)),
      10,
    );
    expect(of({}, "absent")).toBeCloseTo(
      bayes((f) => atMost(0, f)),
      10,
    );
    expect(of({ level: "clear" }, "absent")).toBeCloseTo(
      bayes((f) => atMost(1, f)),
      10,
    );
  });

  test("a measured value falls into its grade: below 0.5 mm none, from 0.5 slight, from 2 clear", () => {
    const id = "ball-joint-worn@front-left";
    const at = (value: number): number => present([check("joint-play@front-left", "present", { value })], id);
    const graded = (state: Answer["state"], level?: string): number =>
      present([check("joint-play@front-left", state, level === undefined ? {} : { level })], id);
    expect(at(0.49)).toBe(graded("absent"));
    expect(at(0.5)).toBe(graded("present", "slight"));
    expect(at(1.99)).toBe(graded("present", "slight"));
    expect(at(2)).toBe(graded("present", "clear"));
  });

  test("an observation without its place is seen at one of its places, on either side alike", () => {
    const left = present([check("link-play")], "bar-link-worn@front-left");
    const right = present([check("link-play")], "bar-link-worn@front-right");
    expect(left).toBeCloseTo(right, 12);
    expect(left).toBeGreaterThan(priorOf("bar-link-worn@front-left"));
    expect(left).toBeLessThan(present([check("link-play@front-left")], "bar-link-worn@front-left"));
  });
});

describe("complaints", () => {
  test("a complaint with a feature is one bit: strength times the chance of the feature, leak times its background", () => {
    // Suspects: links and joints on both sides, rack; features told, so mixed with the background by 0.8.
    const grounded = groundCar(knowledge, strut);
    const trusted = (p: number): number => 0.8 * p + 0.2 * 0.3;
    const fit = { "bar-link": trusted(0.75), "ball-joint": trusted(0.6), rack: trusted(0.75) };
    const strength = { "bar-link": 0.75, "ball-joint": 0.4, rack: 0.75 };
    const best = Math.max(...Object.values(fit), 0.3);
    const leak = (0.02 * 0.3) / best;
    let evidence = 0;
    const marginal = new Map<string, number>();
    const n = grounded.suspects.length;
    for (let set = 0; set < 2 ** n; set++) {
      let p = 1;
      let silent = 1 - leak;
      for (const s of grounded.suspects) {
        const there = ((set >> s.index) & 1) === 1;
        p *= there ? s.prior : 1 - s.prior;
        const part = s.part as keyof typeof fit;
        if (there) silent *= 1 - (strength[part] * fit[part]) / best;
      }
      const joint = p * (1 - silent);
      evidence += joint;
      for (const s of grounded.suspects) {
        if (((set >> s.index) & 1) === 1) marginal.set(s.id, (marginal.get(s.id) ?? 0) + joint);
      }
    }
    const { ranking } = weigh(grounded, [report("noise:small-bumps")]);
    expect(ranking).toHaveLength(n);
    for (const r of ranking) expect(r.present).toBeCloseTo((marginal.get(r.suspect.id) ?? 0) / evidence, 10);
  });

  test("a present feature makes its complaint present and says so; a bare feature without a complaint changes nothing and says so", () => {
    const grounded = groundCar(knowledge, strut);
    const implied = weigh(grounded, [report("noise:small-bumps")]);
    const told = weigh(grounded, [report("noise"), report("noise:small-bumps")]);
    expect(implied.ranking).toEqual(told.ranking);
    expect(implied.problems.map((p) => p.code)).toEqual(["implied-complaint"]);
    const bare = weigh(grounded, [report("small-bumps")]);
    expect(bare.problems.map((p) => p.code)).toEqual(["no-effect"]);
    expect(bare.ranking.map((r) => r.present)).toEqual(weigh(grounded, []).ranking.map((r) => r.present));
  });

  test("hearing it on the left speaks for the left, and only so far", () => {
    const answers = [report("noise"), report("noise:from-left")];
    const left = present(answers, "bar-link-worn@front-left");
    const right = present(answers, "bar-link-worn@front-right");
    expect(left / right).toBeGreaterThan(1.5);
    expect(left / right).toBeLessThan(0.7 / 0.2);
  });

  test("the share that is not in the knowledge is the leak's: all of it when no fault can be there", () => {
    const bare = tinyKnowledge((records) => {
      for (const id of ["bar-link-worn", "rack-worn", "ball-joint-worn"]) {
        patch(records, `faults/${id}.json`, { life: { share: 0.000_001 }, modifiers: [] });
      }
    }).knowledge;
    const { notInKnowledge } = weigh(groundCar(bare, strut), [report("noise")]);
    expect(notInKnowledge).toBeGreaterThan(0.999);
  });

  test("contradicting answers to one finding are named, and the later one counts", () => {
    const grounded = groundCar(knowledge, strut);
    const both = weigh(grounded, [check("link-play@front-left"), check("link-play@front-left", "absent")]);
    expect(both.problems.map((p) => p.code)).toEqual(["contradictory-answers"]);
    expect(both.ranking).toEqual(weigh(grounded, [check("link-play@front-left", "absent")]).ranking);
  });
});

describe("errors", () => {
  const grounded = groundCar(knowledge, strut);
  test.each([
    ["a finding that is not there", () => weigh(grounded, [check("no-such-thing")]), "unknown-id"],
    ["a place that is not there", () => weigh(grounded, [check("link-play@roof")]), "unknown-id"],
    [
      "a grade that is not there",
      () => weigh(grounded, [check("joint-play@front-left", "present", { level: "huge" })]),
      "unknown-id",
    ],
    ["a feature of another complaint", () => weigh(grounded, [check("small-bumps:noise")]), "unknown-id"],
    [
      "a value that is no number",
      () => weigh(grounded, [check("joint-play@front-left", "present", { value: Number.NaN })]),
      "bad-request",
    ],
    ["a layout that is not there", () => groundCar(knowledge, { front: { layout: "hover" } }), "bad-request"],
    ["an odometer below zero", () => groundCar(knowledge, { odometerKm: -1 }), "bad-request"],
    ["a context that is not there", () => groundCar(knowledge, {}, ["flood"]), "unknown-id"],
    ["a knowledge without faults", () => groundCar({ ...knowledge, faults: [] }, {}), "empty-model"],
  ])("%s is a coded error", (_, act, code) => {
    expect(act).toThrowError(expect.objectContaining({ code }));
  });
});

describe("next check, proof and stop", () => {
  test("a check that settles the leader beats one that settles an also-ran, and set-up minutes count", () => {
    const grounded = groundCar(knowledge, strut);
    const answers = [report("noise:small-bumps"), report("noise:from-left")];
    const proposed = proposeChecks(grounded, answers, weighing(grounded, answers), { only: "checks" });
    const feel = proposed.find((p) => p.id === "feel-link@front-left");
    const pry = proposed.find((p) => p.id === "pry-joint@front-left");
    expect(feel?.gainBits).toBeGreaterThan(pry?.gainBits ?? Number.POSITIVE_INFINITY);
    expect(feel?.setUpMinutes).toBe(4);
    expect(feel?.score).toBeCloseTo((feel?.gainBits ?? 0) / 7, 12);
    const up = proposeChecks(grounded, answers, weighing(grounded, answers), {
      only: "checks",
      setUp: "hanging",
    });
    expect(up.find((p) => p.id === "feel-link@front-left")?.score).toBeCloseTo((feel?.gainBits ?? 0) / 3, 12);
  });

  test("what cannot be done is left out: no lift, not possible, not by an owner", () => {
    const grounded = groundCar(knowledge, strut);
    const answers = [report("noise")];
    const ids = (options: Parameters<typeof proposeChecks>[3]): string[] =>
      proposeChecks(grounded, answers, weighing(grounded, answers), { only: "checks", ...options }).map(
        (p) => p.id,
      );
    expect(ids({})).toContain("feel-link@front-left");
    expect(ids({ lift: false }).filter((id) => id.startsWith("feel-link"))).toEqual([]);
    expect(ids({ who: "owner" })).toEqual([]);
    expect(ids({ notPossible: ["feel-link@front-left"] })).not.toContain("feel-link@front-left");
    expect(ids({ notPossible: ["feel-link@front-left"] })).toContain("feel-link@front-right");
    expect(ids({ notPossible: ["feel-link"] }).filter((id) => id.startsWith("feel-link"))).toEqual([]);
  });

  test("a decisive finding by hand proves; the same one told does not; the stop signal follows", () => {
    const grounded = groundCar(knowledge, strut);
    const proven = weighing(grounded, [report("noise"), check("link-play@front-left")]);
    expect(proven.weighed.proven).toEqual(["bar-link-worn@front-left"]);
    expect(stopSignal(proven.weighed, []).kind).toBe("proven");
    const told = weighing(grounded, [report("noise"), report("link-play@front-left")]);
    expect(told.weighed.proven).toEqual([]);
    expect(stopSignal(told.weighed, proposeChecks(grounded, [], told)).kind).toBe("check-on");
    expect(stopSignal(weigh(grounded, []), []).kind).toBe("nothing-reported");
    expect(stopSignal(told.weighed, []).kind).toBe("nothing-more-to-learn");
  });

  test("a dangerous fault raises its notice from its own bar on, and then no road test is proposed", () => {
    const { knowledge: withRoad } = tinyKnowledge((records) => {
      patch(records, "checks/watch-rack.json", { setUp: "road", does: ["drives"], cautions: [] });
    });
    const grounded = groundCar(withRoad, strut);
    const calm = [report("noise")];
    const alarming = [report("noise"), check("joint-play@front-left", "present", { level: "clear" })];
    expect(weigh(grounded, calm).notices).toEqual([]);
    expect(weigh(grounded, alarming).notices.map((n) => n.say)).toEqual([
      "Do not drive it; have it recovered.",
    ]);
    const road = (answers: Answer[]): boolean =>
      proposeChecks(grounded, answers, weighing(grounded, answers)).some((p) => p.id === "watch-rack@front");
    expect(road(calm)).toBe(true);
    expect(road(alarming)).toBe(false);
  });

  test("a check's previewed results have chances that sum to 1 and rankings that come true", () => {
    const grounded = groundCar(knowledge, strut);
    const answers = [report("noise:small-bumps")];
    const proposed = proposeChecks(grounded, answers, weighing(grounded, answers), { only: "checks" }).find(
      (p) => p.id === "pry-joint@front-left",
    );
    expect(proposed).toBeDefined();
    if (proposed === undefined) return;
    const results = previewResults(grounded, answers, proposed);
    expect(results).toHaveLength(3);
    expect(results.reduce((sum, r) => sum + r.probability, 0)).toBeCloseTo(1, 9);
    for (const r of results) {
      expect(r.leaders).toEqual(
        weigh(grounded, [...answers, ...r.answers]).ranking.slice(0, r.leaders.length),
      );
    }
  });

  test("left and right share a line until something tells them apart, and its chance is that of either", () => {
    const grounded = groundCar(knowledge, strut);
    const open = weigh(grounded, [report("noise")]);
    const joint = rankingRows(grounded, open).find((r) => r.fault === "bar-link-worn");
    expect(joint?.place).toBe("front left or right");
    expect(joint?.id).toBe("bar-link-worn@front");
    const pair = open.sets.find(
      (s) => s.suspects.join() === "bar-link-worn@front-left,bar-link-worn@front-right",
    );
    const both = joint?.suspects.reduce((sum, s) => sum + s.explains, 0) ?? 0;
    expect(joint?.explains).toBeCloseTo(both - (pair?.probability ?? 0), 12);
    const told = rankingRows(grounded, weigh(grounded, [report("noise"), report("noise:from-left")]));
    expect(told.filter((r) => r.fault === "bar-link-worn").map((r) => r.place)).toEqual([
      "front left",
      "front right",
    ]);
  });

  test("findings have names for people", () => {
    expect(findingName(knowledge, "noise:small-bumps")).toBe("a noise: over small bumps");
    expect(findingName(knowledge, "link-play@front-left")).toBe("play in the bar link, front left");
    expect(findingName(knowledge, "kerb-strike")).toBe("hit a kerb");
  });
});

describe("a part that only some cars have", () => {
  test("seen by hand it convicts as well on a car of unknown build as on one known to have it", () => {
    const seen = [check("link-play@front-left")];
    const known = present(seen, "bar-link-worn@front-left", {
      front: { layout: "strut" },
      odometerKm: 130_000,
    });
    const unknown = present(seen, "bar-link-worn@front-left", { odometerKm: 130_000 });
    // 0.8 p w / (0.8 p w + (1 - 0.8 p) 0.8 leak): the share cancels but for the suspect's own silence.
    expect(Math.abs(known - unknown)).toBeLessThan(0.01);
  });
});
