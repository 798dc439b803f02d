import { writeCar } from "../../car/car.ts";
import { standardNormal } from "../../maths/standard-normal.ts";
import { type Grounded, groundCar } from "../ground.ts";
import { movable, moved } from "../movable.ts";
import { perturbedKnowledge } from "./perturbed-knowledge.ts";

/**
 * The same car in a world that differs from the knowledge as the knowledge's own spreads say that it may: strengths and
 * leaks, and the prior of each fault, the same way at all its places.
 */
export function perturbedWorld(grounded: Grounded, uniform: () => number): Grounded {
  const { knowledge, car, contexts, fitted } = grounded;
  const world = groundCar(perturbedKnowledge(knowledge, uniform), writeCar(car), contexts, fitted);
  const spread = knowledge.doubt?.spreads.priors.spread ?? 0;
  const by = new Map<string, number>();
  const suspects = world.suspects.map((suspect) => {
    const own = by.get(suspect.fault) ?? standardNormal(uniform);
    by.set(suspect.fault, own);
    return { ...suspect, prior: moved(movable(suspect.prior, spread), own) };
  });
  return { ...world, suspects, prior: Float64Array.from(suspects, (s) => s.prior) };
}
