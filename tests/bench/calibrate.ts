import { groundCar } from "../../lib/engine/index.ts";
import { byExpectedCost, playCase, type Situation, shippedChoice } from "../../lib/engine/policies/index.ts";
import { workshopCosts } from "../../lib/engine/repair-cost.ts";
import { drawCar, firedSuspects, perturbedWorld } from "../../lib/engine/simulate/index.ts";
import { seededUniform } from "../../lib/maths/seeded-uniform.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";
import { anyCarOnTheRoad } from "./fleet.ts";
import type { CalibrationJob, CalibrationResult } from "./simulation-jobs.ts";

/**
 * Chances that suspects were given, with what is true: of explaining the complaint and of being there; when only the
 * complaint is told, and when the shipped policy has come to its verdict.
 */
export function calibrate(job: CalibrationJob): CalibrationResult {
  const knowledge = shippedKnowledge();
  const costs = workshopCosts(knowledge);
  const car = anyCarOnTheRoad(knowledge, job.seed);
  const grounded = groundCar(knowledge, car);
  const uniform = seededUniform(job.seed + 2);
  const stop = byExpectedCost(costs);
  const out: CalibrationResult = { told: empty(), verdict: empty(), present: empty() };
  for (let k = 0; k < job.cars; k++) {
    const world = job.perturbed ? perturbedWorld(grounded, uniform) : grounded;
    const drawn = drawCar(world, uniform);
    const fired = new Set(firedSuspects(drawn));
    const seen: Situation[] = [];
    playCase(grounded, drawn, shippedChoice, stop, {
      costs,
      uniform,
      watch: (situation) => {
        if (seen.length < 2) seen.push(situation);
        else seen[1] = situation;
      },
    });
    const note = (at: Situation | undefined, into: CalibrationResult["told"], present: boolean): void => {
      for (const r of at?.weighing.weighed.ranking ?? []) {
        into.forecast.push(present ? r.present : r.explains);
        const there = present ? drawn.present[r.suspect.index] === 1 : fired.has(r.suspect.index);
        into.cameTrue.push(there ? 1 : 0);
      }
    };
    const last = seen.at(-1);
    note(seen[0], out.told, false);
    note(last, out.verdict, false);
    note(last, out.present, true);
  }
  return out;
}

function empty(): CalibrationResult["told"] {
  return { forecast: [], cameTrue: [] };
}
