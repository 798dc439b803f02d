import { describe, expect, test } from "vitest";
import {
  type Answer,
  booking,
  type Course,
  drawCourse,
  driveAdvice,
  groundCar,
  partsReady,
  weighing,
  workshopCosts,
} from "../../lib/engine/index.ts";
import { drawLikelyCar } from "../../lib/engine/advice/draw-likely-car.ts";
import { firedSuspects } from "../../lib/engine/simulate/index.ts";
import { seededUniform } from "../../lib/maths/seeded-uniform.ts";
import { plainAdvice } from "../support/plain-advice.ts";
import { tinyKnowledge } from "../support/tiny-knowledge.ts";

/* Advice before anybody has seen the car, on the tiny, invented knowledge; the numbers are worked out here. */

const { knowledge } = tinyKnowledge();
const car = { front: { layout: "strut" }, odometerKm: 130_000, ageYears: 10 };
const advice = plainAdvice();
const costs = workshopCosts(knowledge);
const grounded = groundCar(knowledge, car);
const [complaint] = knowledge.complaints;
const told: Answer[] = [{ finding: complaint?.id ?? "", state: "present", by: "report" }];
const now = weighing(grounded, told);

describe("whether to drive", () => {
  test("with nothing reported nothing speaks against it more than on any such car, and the mildest words still warn", () => {
    const nothing = driveAdvice(grounded, weighing(grounded, []).weighed, advice);
    // Without a complaint "explains" is the chance of being there: what any car of this age may have.
    expect(nothing.say).toBe("From here nobody can tell.");
    expect(nothing.stopIf).toEqual(["it gets worse"]);
  });

  test("danger is the sum of chance over bar of the dangerous faults", () => {
    const { ranking } = now.weighed;
    const expected = ranking.reduce((sum, { suspect, explains, present }) => {
      const fault = knowledge.faults.find((f) => f.id === suspect.fault);
      if (fault?.stop === undefined || fault.severity.word !== "dangerous") return sum;
      return sum + Math.max(explains, present - suspect.prior) / fault.stop.from;
    }, 0);
    expect(expected).toBeGreaterThan(0);
    expect(driveAdvice(grounded, now.weighed, advice).danger).toBeCloseTo(expected, 12);
  });

  test("a notice of a dangerous fault gives the gravest level whatever the sum", () => {
    const dangerous = grounded.suspects.find(
      (s) => grounded.faults.get(s.fault)?.severity.word === "dangerous",
    );
    const notices = [{ suspect: dangerous?.id ?? "", probability: 0.5, say: "Stop." }];
    expect(driveAdvice(grounded, { ...now.weighed, notices }, advice).level).toBe("recover");
  });
});

describe("how long to book", () => {
  const course = (checking: number, more: Partial<Course> = {}): Course => ({
    checking,
    repairing: 60,
    handedOver: false,
    raised: true,
    helper: false,
    roadTest: false,
    repairs: [],
    ...more,
  });

  test("half of the visits end by p50 and nine of ten by p90", () => {
    const told = booking([10, 20, 30, 40, 50, 60, 70, 80, 90, 100].map((m) => course(m)));
    expect(told?.checking).toEqual({ p50: 50, p90: 90 });
    expect(told?.whole).toEqual({ p50: 110, p90: 150 });
  });

  test("what is needed is a share of the visits", () => {
    const told = booking([course(5, { helper: true }), course(5), course(5, { raised: false }), course(5)]);
    expect(told).toMatchObject({ visits: 4, helper: 0.25, raised: 0.75, roadTest: 0, handedOver: 0 });
    expect(booking([])).toBeUndefined();
  });

  test("what is drawn as the cause is what the ranking says of it", () => {
    const uniform = seededUniform(20_261_128);
    const draws = 4000;
    const counts = new Map<number, number>();
    for (let k = 0; k < draws; k++) {
      const drawn = drawLikelyCar(grounded, told, now, uniform);
      for (const i of drawn === undefined ? [] : firedSuspects(drawn))
        counts.set(i, (counts.get(i) ?? 0) + 1);
    }
    for (const { suspect, explains } of now.weighed.ranking) {
      const error = Math.sqrt((explains * (1 - explains)) / draws);
      expect(Math.abs((counts.get(suspect.index) ?? 0) / draws - explains), suspect.id).toBeLessThan(
        4 * error + 1e-3,
      );
    }
  });

  test("a visit is played to its end, the same for the same numbers", () => {
    const play = (): Course | undefined =>
      drawCourse(grounded, told, now, { costs, uniform: seededUniform(5) });
    expect(play()).toEqual(play());
    expect(play()?.checking).toBeGreaterThanOrEqual(0);
    expect(
      drawCourse(grounded, [], weighing(grounded, []), { costs, uniform: seededUniform(5) }),
    ).toBeUndefined();
  });
});

describe("parts to have ready", () => {
  const parts = partsReady(grounded, now, costs, advice);

  test("ordering pays from return / (return + wait) on", () => {
    expect(parts.length).toBeGreaterThan(0);
    for (const { part, breakEven, chance, order } of parts) {
      const group = knowledge.parts.find((p) => p.id === part)?.group ?? "";
      const band = costs.byPart[part] ?? costs.byGroup[group] ?? costs.otherwise;
      const returned = 10 + (60 * 0.2 * (costs.bands[band]?.price ?? 0)) / costs.hourlyRate;
      expect(breakEven).toBeCloseTo(returned / (returned + 60), 12);
      expect(order).toBe(chance >= breakEven);
    }
  });

  test("the chance of a part is that of its faults together, and parts that go with it have at least as much", () => {
    for (const { part, place, because, chance } of parts) {
      const own = now.weighed.ranking
        .filter(({ suspect }) => because.includes(suspect.id))
        .map(({ explains }) => explains);
      expect(chance, `${part}@${place}`).toBeGreaterThanOrEqual(Math.max(0, ...own) - 0.01);
      expect(chance).toBeLessThanOrEqual(1);
    }
  });
});
