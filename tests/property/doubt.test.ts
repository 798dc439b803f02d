import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { quickLook } from "../../lib/engine/doubt/quick-look.ts";
import {
  type Answer,
  type Grounded,
  groundCar,
  mindChangers,
  misfit,
  proposeChecks,
  steadiness,
  weigh,
  weighing,
  whySuspect,
} from "../../lib/engine/index.ts";
import { seededUniform } from "../../lib/maths/seeded-uniform.ts";
import { answersOf, anyCar } from "../support/random-answers.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";
import { patch, tinyKnowledge } from "../support/tiny-knowledge.ts";

const knowledge = shippedKnowledge();
const answers = answersOf(knowledge, 6);
const RUNS = { numRuns: 8, seed: 20261125 };
const logit = (p: number): number => Math.log(p / (1 - p));
const told = (finding: string, state: "present" | "absent" = "present"): Answer => ({
  finding,
  state,
  by: "report",
});
const seen = (finding: string, state: "present" | "absent" = "present"): Answer => ({
  finding,
  state,
  by: "check",
});

test("a quick look gives the chances of the whole weighing", () => {
  fc.assert(
    fc.property(anyCar, answers, (car, given) => {
      const grounded = groundCar(knowledge, car);
      const quick = quickLook(grounded, given);
      for (const { suspect, explains, present } of weigh(grounded, given).ranking) {
        expect(quick.present[suspect.index]).toBeCloseTo(present, 7);
        expect(quick.explains[suspect.index]).toBeCloseTo(explains, 7);
      }
    }),
    RUNS,
  );
});

describe("why", () => {
  test("what the answers added and took away sums to the whole way from before to now", () => {
    fc.assert(
      fc.property(anyCar, answers, fc.nat(), (car, given, pick) => {
        const grounded = groundCar(knowledge, car);
        const suspect = grounded.suspects[pick % grounded.suspects.length];
        const why = whySuspect(grounded, given, suspect?.id ?? "");
        const sum = why.answers.reduce((total, a) => total + a.logOdds, 0);
        expect(sum).toBeCloseTo(logit(why.present) - logit(why.prior), 6);
      }),
      RUNS,
    );
  });

  test("the order of entry changes nothing", () => {
    fc.assert(
      fc.property(anyCar, answers, (car, given) => {
        const grounded = groundCar(knowledge, car);
        const suspect = weigh(grounded, given).ranking[0]?.suspect.id ?? "";
        expect(whySuspect(grounded, given.toReversed(), suspect)).toEqual(
          whySuspect(grounded, given, suspect),
        );
      }),
      RUNS,
    );
  });

  // Source: Shapley 1953 (from memory): of two players each gets the mean of what it adds first and last.
  test("two answers share what they say together as Shapley does", () => {
    const grounded = groundCar(tinyKnowledge().knowledge, { front: { layout: "strut" } });
    const pair = [seen("link-play@front-left"), told("noise")] as const;
    const suspect = "bar-link-worn@front-left";
    const at = (given: readonly Answer[]): number =>
      logit(weigh(grounded, given).ranking.find((r) => r.suspect.id === suspect)?.present ?? Number.NaN);
    const why = whySuspect(grounded, pair, suspect);
    pair.forEach((answer, k) => {
      const other = pair[1 - k] as Answer;
      const fair = (at([answer]) - at([]) + at([...pair]) - at([other])) / 2;
      expect(why.answers.find((a) => a.finding === answer.finding)?.logOdds).toBeCloseTo(fair, 9);
    });
  });

  test("a feature without its complaint is not weighed before it", () => {
    const grounded = groundCar(knowledge, {});
    const given = [told("noise"), told("noise:small-bumps"), told("shake", "absent")];
    const leader = weigh(grounded, given).ranking[0]?.suspect.id ?? "";
    const why = whySuspect(grounded, given, leader);
    expect(why.answers).toHaveLength(3);
    expect(why.answers.find((a) => a.finding === "noise")?.logOdds).toBeGreaterThan(0);
  });
});

describe("misfit", () => {
  // Source: the law of total probability.
  test("the chances of all results of a check, given everything else, sum to one", () => {
    fc.assert(
      fc.property(anyCar, answers, fc.nat(), (car, given, pick) => {
        const grounded = groundCar(knowledge, car);
        const nodes = [...grounded.nodes.values()].filter((n) => !given.some((a) => a.finding === n.id));
        const node = nodes[pick % nodes.length];
        if (node === undefined) return;
        const graded = node.observation.levels.length > 1;
        const results: Answer[] = [
          seen(node.id, "absent"),
          ...node.observation.levels.map((level) => ({ ...seen(node.id), ...(graded ? { level } : {}) })),
        ];
        const before = quickLook(grounded, given).logLikelihood;
        const sum = results.reduce(
          (total, result) => total + Math.exp(quickLook(grounded, [...given, result]).logLikelihood - before),
          0,
        );
        expect(sum).toBeCloseTo(1, 6);
      }),
      RUNS,
    );
  });

  test("an answer that contradicts a proof is named first, and without it the proven part leads", () => {
    const { knowledge: tiny } = tinyKnowledge((records) => {
      patch(records, "observations/link-play.json", { leak: 0.0005 });
      patch(records, "observations/rack-play.json", { leak: 0.0005 });
      patch(records, "faults/rack-worn.json", {
        life: { share: 0.001 },
        links: { "rack-play": { s: 0.98, basis: "annex" } },
      });
    });
    const grounded = groundCar(tiny, { front: { layout: "strut" } });
    const given = [
      told("noise"),
      seen("link-play@front-left"),
      seen("rack-play@front"),
      seen("joint-play@front-left", "absent"),
    ];
    const fit = misfit(grounded, given, weigh(grounded, given));
    expect(fit.answers[0]?.finding).toBe("rack-play@front");
    expect(fit.lookAgain?.finding).toBe("rack-play@front");
    expect(fit.lookAgain?.leaderWithout).toBe("bar-link-worn@front-left");
  });

  // Source: Jensen et al. 1991 (from memory): negative when findings support each other, positive when they fight.
  test("findings of one cause agree; the cause seen and its effect missing conflict", () => {
    const grounded = groundCar(tinyKnowledge().knowledge, { front: { layout: "strut" } });
    const agree = [told("noise"), seen("link-play@front-left")];
    const fight = [told("noise", "absent"), seen("link-play@front-left")];
    expect(misfit(grounded, agree, weigh(grounded, agree)).conflict).toBeLessThan(0);
    expect(misfit(grounded, fight, weigh(grounded, fight)).conflict).toBeGreaterThan(0);
  });

  test("a complaint alone is never in conflict, and is not offered as a mistake", () => {
    const grounded = groundCar(knowledge, {});
    for (const { id } of knowledge.complaints) {
      const fit = misfit(grounded, [told(id)], weigh(grounded, [told(id)]));
      expect(fit.conflict).toBeCloseTo(0, 9);
      expect(fit.answers).toEqual([]);
    }
  });

  test("a complaint that everything known was ruled out for is said to be unexplained", () => {
    const grounded = groundCar(tinyKnowledge().knowledge, { front: { layout: "strut" } });
    const cleared = [...grounded.nodes.keys()].map((id) => seen(id, "absent"));
    const given = [told("noise"), ...cleared];
    const weighed = weigh(grounded, given);
    expect(misfit(grounded, given, weighed).unexplained).toBe(weighed.notInKnowledge >= 0.5);
    expect(weighed.notInKnowledge).toBeGreaterThan(weigh(grounded, [told("noise")]).notInKnowledge);
    const leaky = groundCar(
      tinyKnowledge((records) => patch(records, "complaints/noise.json", { leak: 0.3 })).knowledge,
      { front: { layout: "strut" } },
    );
    expect(misfit(leaky, given, weigh(leaky, given)).unexplained).toBe(true);
  });
});

describe("steadiness", () => {
  /** A ball joint at either side against the rack: rare, so that chances go by prior times strength. */
  const twoRivals = (): Grounded =>
    groundCar(
      tinyKnowledge((records) => {
        patch(records, "faults/ball-joint-worn.json", { life: { share: 0.002 } });
        patch(records, "faults/rack-worn.json", { life: { share: 0.005 } });
      }).knowledge,
      { front: { layout: "wishbone" } },
    );

  // Source: normal distribution of the log ratio (delta method), worked apart from this code:
  // ln(0.005 * 0.75 / (2 * 0.002 * 0.4)) = 0.852; deviation sqrt(2 * 0.6^2 + (0.4 * 0.6)^2 + (0.4 * 0.25)^2) = 0.888;
  // Phi(0.852 / 0.888) = 0.831. Standard error of 1500 draws 0.010.
  test("two rare rivals: the leader stays as often as the normal distribution says", () => {
    const grounded = twoRivals();
    const given = [told("noise")];
    const found = steadiness(grounded, given, weigh(grounded, given), {
      uniform: seededUniform(4),
      draws: 1500,
    });
    expect(found?.leader.row.id).toBe("rack-worn@front");
    expect(found?.leader.share).toBeGreaterThan(0.831 - 0.03);
    expect(found?.leader.share).toBeLessThan(0.831 + 0.03);
    expect(found?.rivals[0]?.row.id).toBe("ball-joint-worn@front");
    expect((found?.leader.share ?? 0) + (found?.rivals[0]?.share ?? 0)).toBeCloseTo(1, 9);
    expect(found?.kind).toBe("steady");
  });

  test("a decisive finding makes the leader steadier", () => {
    const grounded = twoRivals();
    const share = (given: readonly Answer[]): number =>
      steadiness(grounded, given, weigh(grounded, given), { uniform: seededUniform(4) })?.leader.share ?? 0;
    expect(share([told("noise"), seen("rack-play@front")])).toBeGreaterThan(share([told("noise")]));
  });

  test("the same seed gives the same answer; shares are shares; the leader's chance lies between its ends or near them", () => {
    fc.assert(
      fc.property(anyCar, answers, fc.nat(), (car, given, seed) => {
        const grounded = groundCar(knowledge, car);
        const weighed = weigh(grounded, given);
        const draw = () => steadiness(grounded, given, weighed, { uniform: seededUniform(seed), draws: 12 });
        const found = draw();
        expect(draw()).toEqual(found);
        if (found === undefined) {
          expect(weighed.target).toBe("none");
          return;
        }
        const all = [found.leader, ...found.rivals].map((r) => r.share);
        expect(all.every((s) => s >= 0 && s <= 1)).toBe(true);
        expect(all.reduce((a, b) => a + b, 0)).toBeLessThanOrEqual(1 + 1e-9);
        expect(found.low).toBeLessThanOrEqual(found.high);
      }),
      { ...RUNS, numRuns: 4 },
    );
  });

  test("a knowledge that states no spread for priors and leaks moves its strengths only", () => {
    const grounded = twoRivals();
    const { doubt: _, ...stated } = grounded.knowledge;
    const given = [told("noise")];
    const found = steadiness({ ...grounded, knowledge: stated }, given, weigh(grounded, given), {
      uniform: seededUniform(4),
    });
    // 0.852 / sqrt(0.24^2 + 0.1^2) = 3.3 deviations.
    expect(found?.leader.share).toBeGreaterThan(0.98);
  });
});

test("what would change the mind really does: after the result the named one leads, most probable first", () => {
  const grounded = groundCar(knowledge, { drive: "front", front: { layout: "strut" }, odometerKm: 120_000 });
  const given = [told("noise"), told("noise:small-bumps"), told("noise:from-left")];
  const now = weighing(grounded, given);
  const proposed = proposeChecks(grounded, given, now, { only: "checks", limit: 12 });
  const changers = mindChangers(grounded, given, now.weighed, proposed);
  const leader = now.weighed.ranking[0]?.suspect;
  expect(changers.length).toBeGreaterThan(0);
  let before = 1;
  for (const { answers: found, leader: next, explains, probability, check } of changers) {
    const after = weigh(grounded, [...given, ...found]);
    expect(after.ranking[0]?.explains).toBeCloseTo(explains, 6);
    expect(after.ranking.find((r) => r.suspect.id === next)?.explains).toBeCloseTo(explains, 6);
    expect(next).not.toBe(leader?.id);
    expect(Math.exp(after.logEvidence - now.weighed.logEvidence)).toBeCloseTo(probability, 6);
    expect(probability).toBeLessThanOrEqual(before);
    expect(proposed.some((p) => p.id === check.id)).toBe(true);
    before = probability;
  }
});
