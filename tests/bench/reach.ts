import { readCar } from "../../lib/car/car.ts";
import { type Grounded, groundCar } from "../../lib/engine/index.ts";
import {
  byConfidence,
  playCase,
  type PlayedCase,
  shippedChoice,
  type Situation,
} from "../../lib/engine/policies/index.ts";
import { indexPlaces } from "../../lib/engine/place-index.ts";
import { suspectPriors } from "../../lib/engine/priors.ts";
import { repairOf, workshopCosts } from "../../lib/engine/repair-cost.ts";
import { drawCar, firedSuspects, type SimulatedCar } from "../../lib/engine/simulate/index.ts";
import { seededUniform } from "../../lib/maths/seeded-uniform.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";
import { anyCarOnTheRoad } from "./fleet.ts";
import { foundByTheWay } from "./found-by-the-way.ts";
import { happenedWith } from "./happened-with.ts";
import { repairsWith } from "./repairs-with.ts";
import type { ReachJob, ReachMiss, ReachRow } from "./simulation-jobs.ts";
import { whyMissed } from "./why-missed.ts";

/** Cars of the road that are tried until one can have the fault. */
const MOST_CARS = 400;
/** The search ends at a repair this likely, or when no check tells as many bits. */
const CONFIDENCE = 0.95;
const LEAST_BITS = 0.01;
/** A working day. */
const MOST_MINUTES = 480;
/** Checks of one set-up made together while each tells little. */
const AT_ONCE = 8;

/**
 * Cases that start from a fault, on any car of the road that can have it: does the search end with the right part? It goes
 * on, for a working day at most, while a check tells anything.
 *
 * The right part, by what a workshop then mends: the part at the place that is named, another that is proven by a decisive
 * finding and stands in the order of repairs, or one that the remedy of the fault named renews with it (the other side of
 * the axle, what comes with it); one of them belongs to a fault that really fired on the complaint. A fault that nobody
 * complains of is found by one of its own findings, as in a routine look over the car; then only its own part is right.
 */
export function reach(job: ReachJob): ReachRow[] {
  const knowledge = shippedKnowledge();
  const costs = workshopCosts(knowledge);
  const places = indexPlaces(knowledge);
  const stop = byConfidence(costs, CONFIDENCE, LEAST_BITS);
  return job.faults.map((fault): ReachRow => {
    const tally = { right: 0, exact: 0, amongRepairs: 0, minutes: 0, cases: 0 };
    const misses: ReachMiss[] = [];
    const silent = knowledge.faults.find((f) => f.id === fault)?.shows.length === 0;
    for (let k = 0; k < job.cases; k++) {
      const seed = job.seed + 1009 * k;
      const uniform = seededUniform(seed);
      const grounded = carWith(fault, seed, job.lately ? happenedWith(knowledge, fault, seed) : []);
      const able = grounded?.suspects.filter((s) => s.fault === fault) ?? [];
      const suspect = able[Math.floor(uniform() * able.length)];
      if (grounded === undefined || suspect === undefined) break;
      const car = silent
        ? foundByTheWay(grounded, uniform, suspect.index)
        : drawCar(grounded, uniform, { suspect: suspect.index });
      if (car === undefined) break;
      let last: Situation | undefined;
      const played = playCase(grounded, car, shippedChoice, stop, {
        costs,
        watch: (situation) => {
          last = situation;
        },
        uniform,
        mostMinutes: MOST_MINUTES,
        atOnce: AT_ONCE,
        only: silent ? "checks" : undefined,
      });
      const { exact, right } = rightPart(grounded, car, played, last);
      tally.cases += 1;
      tally.minutes += played.minutes;
      if (exact) tally.exact += 1;
      if (right) tally.right += 1;
      if (right || played.verdict.order.includes(repairOf(grounded, suspect.index))) tally.amongRepairs += 1;
      if (!right) {
        misses.push({
          seed,
          complaint: silent ? "found by the way" : car.complaint.id,
          hidden: suspect.id,
          named: played.verdict.repair ?? "handed over",
          chance: played.verdict.chance,
          minutes: played.minutes,
          why: whyMissed(grounded, car, suspect, played),
        });
      }
    }
    return { fault, ...tally, minutes: tally.cases === 0 ? 0 : tally.minutes / tally.cases, misses };
  });

  function carWith(fault: string, seed: number, happened: readonly string[]): Grounded | undefined {
    // Grounding with one fault alone is quick: most cars cannot have a rare part.
    const alone = { ...knowledge, faults: knowledge.faults.filter((f) => f.id === fault) };
    for (let k = 0; k < MOST_CARS; k++) {
      const input = anyCarOnTheRoad(knowledge, seed + 31 * k);
      if (suspectPriors(alone, readCar(knowledge, input).car, happened, places).every((s) => s.prior === 0))
        continue;
      const grounded = groundCar(knowledge, input, happened);
      if (grounded.suspects.some((s) => s.fault === fault)) return grounded;
    }
    return undefined;
  }
}

function rightPart(
  grounded: Grounded,
  car: SimulatedCar,
  { verdict }: PlayedCase,
  last: Situation | undefined,
): { exact: boolean; right: boolean } {
  const needed = new Set(firedSuspects(car).map((i) => repairOf(grounded, i)));
  const exact = verdict.repair !== undefined && needed.has(verdict.repair);
  const ranking = last?.weighing.weighed.ranking ?? [];
  const mended = ranking.find((r) => repairOf(grounded, r.suspect.index) === verdict.repair);
  const along = mended === undefined ? [] : repairsWith(grounded, mended.suspect);
  const proven = ranking
    .filter((r) => r.proven)
    .map((r) => repairOf(grounded, r.suspect.index))
    .filter((repair) => verdict.order.includes(repair));
  return { exact, right: exact || [...along, ...proven].some((repair) => needed.has(repair)) };
}
