import { groundCar } from "../../lib/engine/index.ts";
import { byConfidence, playCase, shippedChoice } from "../../lib/engine/policies/index.ts";
import { repairOf, workshopCosts } from "../../lib/engine/repair-cost.ts";
import { drawCar } from "../../lib/engine/simulate/index.ts";
import { seededUniform } from "../../lib/maths/seeded-uniform.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";
import { anyCarOnTheRoad } from "./fleet.ts";
import type { ReachJob, ReachRow } from "./simulation-jobs.ts";

/** Cars of the road that are tried until one can have the fault. */
const MOST_CARS = 400;

/**
 * Cases that start from a fault, on any car of the road that can have it: does the search end with its part, or another
 * that really caused the complaint? The search goes on while a check tells anything, whatever it costs.
 */
export function reach(job: ReachJob): ReachRow[] {
  const knowledge = shippedKnowledge();
  const costs = workshopCosts(knowledge);
  const stop = byConfidence(costs, 0.95, 0.003);
  return job.faults.map((fault): ReachRow => {
    let right = 0;
    let amongRepairs = 0;
    let minutes = 0;
    let cases = 0;
    const named: string[] = [];
    for (let k = 0; k < job.cases; k++) {
      const uniform = seededUniform(job.seed + 1009 * k);
      const grounded = carWith(fault, job.seed + 1009 * k);
      if (grounded === undefined) break;
      const able = grounded.suspects.filter(
        (s) => s.fault === fault && (grounded.faults.get(fault)?.shows.length ?? 0) > 0,
      );
      const suspect = able[Math.floor(uniform() * able.length)];
      if (suspect === undefined) break;
      const car = drawCar(grounded, uniform, { suspect: suspect.index });
      const played = playCase(grounded, car, shippedChoice, stop, { costs, uniform, mostMinutes: 1000 });
      cases += 1;
      minutes += played.minutes;
      const repair = repairOf(grounded, suspect.index);
      if (played.right || played.verdict.order.includes(repair)) amongRepairs += 1;
      if (played.right) right += 1;
      else named.push(`${played.verdict.repair ?? "referred"} for ${repair}`);
    }
    return { fault, cases, right, amongRepairs, minutes: cases === 0 ? 0 : minutes / cases, named };
  });

  function carWith(fault: string, seed: number): ReturnType<typeof groundCar> | undefined {
    for (let k = 0; k < MOST_CARS; k++) {
      const grounded = groundCar(knowledge, anyCarOnTheRoad(knowledge, seed + 31 * k));
      if (grounded.suspects.some((s) => s.fault === fault)) return grounded;
    }
    return undefined;
  }
}
