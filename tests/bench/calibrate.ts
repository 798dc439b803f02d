import { groundCar } from "../../lib/engine/index.ts";
import { byExpectedCost, playCase, shippedChoice } from "../../lib/engine/policies/index.ts";
import { workshopCosts } from "../../lib/engine/repair-cost.ts";
import { drawCar, perturbedWorld } from "../../lib/engine/simulate/index.ts";
import { seededUniform } from "../../lib/maths/seeded-uniform.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";
import { anyCarOnTheRoad } from "./fleet.ts";
import { type ForecastSums, forecastNotes } from "./forecasts.ts";
import type { CalibrationJob } from "./simulation-jobs.ts";

/** Chances that suspects were given by the shipped policy on its way to the verdict, with what is true. */
export function calibrate(job: CalibrationJob): ForecastSums {
  const knowledge = shippedKnowledge();
  const costs = workshopCosts(knowledge);
  const grounded = groundCar(knowledge, anyCarOnTheRoad(knowledge, job.seed));
  const uniform = seededUniform(job.seed + 2);
  const stop = byExpectedCost(costs);
  const notes = forecastNotes();
  for (let k = 0; k < job.cars; k++) {
    const world = job.perturbed ? perturbedWorld(grounded, uniform) : grounded;
    const drawn = drawCar(world, uniform);
    notes.begin(drawn);
    playCase(grounded, drawn, shippedChoice, stop, { costs, uniform, watch: notes.see });
    notes.end();
  }
  return notes.sums();
}
