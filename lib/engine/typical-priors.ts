import type { Knowledge } from "../knowledge/schema/compiled.ts";
import { groundCar } from "./ground.ts";

/** Each fault's greatest chance at any place of a car of which nothing is known: fault id -> probability. */
export function typicalPriors(knowledge: Knowledge): Map<string, number> {
  const priors = new Map<string, number>();
  for (const { fault, prior } of groundCar(knowledge, {}).suspects) {
    priors.set(fault, Math.max(prior, priors.get(fault) ?? prior));
  }
  return priors;
}
