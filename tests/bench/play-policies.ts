import { groundCar } from "../../lib/engine/index.ts";
import {
  byConfidence,
  byExpectedCost,
  chanceOverCost,
  fixedChecklist,
  gainAlone,
  gainPerMinute,
  likeliestFirst,
  type PlayOptions,
  playCase,
  type Policy,
  randomChoice,
  shippedChoice,
  type StopRule,
} from "../../lib/engine/policies/index.ts";
import { workshopCosts } from "../../lib/engine/repair-cost.ts";
import { drawCar } from "../../lib/engine/simulate/index.ts";
import { seededUniform } from "../../lib/maths/seeded-uniform.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";
import { anyCarOnTheRoad } from "./fleet.ts";
import type { PolicyJob, PolicyRow } from "./simulation-jobs.ts";

const POLICIES: readonly Policy[] = [
  randomChoice,
  fixedChecklist,
  likeliestFirst,
  chanceOverCost,
  gainAlone,
  gainPerMinute,
  shippedChoice,
];

/** Every policy on the same simulated cases, all with the shipped stop rule; the shipped one also asks, and also by confidence. */
export function playPolicies(job: PolicyJob): PolicyRow[] {
  const knowledge = shippedKnowledge();
  const grounded = groundCar(knowledge, anyCarOnTheRoad(knowledge, job.seed));
  const costs = workshopCosts(knowledge);
  const uniform = seededUniform(job.seed + 1);
  const expectedCost = byExpectedCost(costs);
  const hasty = {
    ...byExpectedCost({ ...costs, stop: { ...costs.stop, margin: 2 * costs.stop.margin } }),
    name: "expected cost, margin doubled",
  };
  const confidence = byConfidence(costs, 0.9, 0.03);
  const rows: PolicyRow[] = [];
  for (let k = 0; k < job.cars; k++) {
    const car = drawCar(grounded, uniform);
    const play = (policy: Policy, stop: StopRule, name: string, only: PlayOptions["only"]): void => {
      const options = { costs, only, uniform: seededUniform(car.seed) };
      const played = playCase(grounded, car, policy, stop, options);
      rows.push({
        stop: stop.name,
        policy: name,
        minutes: played.minutes,
        checks: played.checks.length,
        setUpChanges: played.setUpChanges,
        right: played.right,
        sure: played.verdict.sure,
        repairMinutes: played.repairMinutes,
        referred: played.verdict.kind === "refer",
      });
    };
    for (const policy of POLICIES) play(policy, expectedCost, policy.name, "checks");
    play(shippedChoice, expectedCost, "shipped, asking too", undefined);
    play(shippedChoice, hasty, "shipped, asking too", undefined);
    // Dear to play, and steady: a quarter of the cases is enough.
    if (k % 4 !== 0) continue;
    for (const policy of [fixedChecklist, likeliestFirst, shippedChoice])
      play(policy, confidence, policy.name, "checks");
    play(shippedChoice, confidence, "shipped, asking too", undefined);
  }
  return rows;
}
