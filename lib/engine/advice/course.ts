import type { Costs } from "../../knowledge/schema/costs.ts";
import type { Answer } from "../answers.ts";
import type { Grounded } from "../ground.ts";
import { shippedChoice } from "../policies/choices.ts";
import { playCase } from "../policies/play-case.ts";
import { byExpectedCost } from "../policies/stop-rules.ts";
import type { ProposeOptions } from "../propose.ts";
import { repairOf } from "../repair-cost.ts";
import { firedSuspects } from "../simulate/simulated-car.ts";
import type { Weighing } from "../weigh.ts";
import { drawLikelyCar } from "./draw-likely-car.ts";

/** How the visit may go, once. */
export interface Course {
  /** Checks and set-ups. Units: minutes. */
  readonly checking: number;
  /** Repairs and seeing whether it is gone, for nothing too. Units: minutes. */
  readonly repairing: number;
  /** The repairs that paid have not cured it: somebody else has to find it, which is not in the minutes. */
  readonly handedOver: boolean;
  /** On a lift, ramps or stands. */
  readonly raised: boolean;
  readonly helper: boolean;
  readonly roadTest: boolean;
  /** `part@place` of what is at fault. */
  readonly repairs: readonly string[];
}

/** What playing a visit needs besides the car. */
export interface CourseOptions
  extends Pick<ProposeOptions, "who" | "lift" | "helper" | "only" | "notPossible"> {
  readonly costs: Costs;
  readonly uniform: () => number;
}

/** Minutes of checking after which a visit is taken to be handed over. */
const MOST_MINUTES = 240;

/** Plays one visit of this car to its end by the shipped policy; undefined when nobody complains of anything. */
export function drawCourse(
  grounded: Grounded,
  answers: readonly Answer[],
  weighing: Weighing,
  options: CourseOptions,
): Course | undefined {
  const car = drawLikelyCar(grounded, answers, weighing, options.uniform);
  if (car === undefined) return undefined;
  const { costs } = options;
  const played = playCase(grounded, car, shippedChoice, byExpectedCost(costs), {
    ...options,
    mostMinutes: MOST_MINUTES,
  });
  const { knowledge } = grounded;
  const made = new Set(played.checks.map((id) => id.split("@")[0]));
  const checks = knowledge.checks.filter((c) => made.has(c.id));
  const needs = new Map(knowledge.setUps.setUps.map((s) => [s.id, s.needs]));
  const raised = checks.some((c) => ["lift", "stands"].includes(needs.get(c.setUp) ?? ""));
  return {
    checking: played.minutes,
    repairing: played.repairMinutes - (played.cured ? 0 : costs.refer.minutes),
    handedOver: !played.cured,
    raised,
    helper: checks.some((c) => c.helper),
    roadTest: checks.some((c) => needs.get(c.setUp) === "road"),
    repairs: [...new Set(firedSuspects(car).map((i) => repairOf(grounded, i)))],
  };
}
