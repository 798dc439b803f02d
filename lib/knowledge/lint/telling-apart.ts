import type { CompiledFault } from "../schema/compiled.ts";
import { anyCar, type CompiledWorld, meet } from "./world.ts";

/** Two faults are told apart by a finding whose chance, present or absent, differs by at least this factor. */
export const APART_RATIO = 3;

/** Complaints that both faults show. */
export function sharedComplaints(a: CompiledFault, b: CompiledFault): string[] {
  const other = new Set(b.shows.map((showing) => showing.complaint));
  return [...new Set(a.shows.map((showing) => showing.complaint))].filter((id) => other.has(id));
}

/** Whether one of the two lists the other as one that no check can tell from it. */
export function listedInseparable(a: CompiledFault, b: CompiledFault): boolean {
  return (
    a.inseparable.some(({ fault }) => fault === b.id) || b.inseparable.some(({ fault }) => fault === a.id)
  );
}

/**
 * Two places at which the faults can both sit on one car and no check tells which it is; undefined when there are none.
 *
 * The same fault twice stands for itself at two places.
 */
export function untoldPlaces(
  world: CompiledWorld,
  a: CompiledFault,
  b: CompiledFault,
): [string, string] | undefined {
  const same = a.id === b.id;
  for (const at of world.placesOf(a)) {
    for (const place of world.placesOf(b)) {
      if (same && at >= place) continue;
      const cars = world.pairCars(a, at, b, place);
      if (anyCar(cars) && greatestFactor(world, a, at, b, place, cars, APART_RATIO) < APART_RATIO)
        return [at, place];
    }
  }
  return undefined;
}

/**
 * How many times likelier the most telling result of a check is from the one fault than from the other, on any of the cars.
 *
 * A result is that an observation is there to at least some grade, or is not. The search ends with the first factor of `enough` or more.
 * Range  1 and above.
 */
export function greatestFactor(
  world: CompiledWorld,
  a: CompiledFault,
  at: string,
  b: CompiledFault,
  place: string,
  cars: Uint8Array,
  enough: number,
): number {
  let greatest = 1;
  const ids = new Set([...a.links, ...b.links].map((link) => link.observation));
  for (const id of ids) {
    const observation = world.observations.get(id);
    if (observation === undefined) continue;
    for (const spot of observation.places) {
      if (!world.overlap(spot, at) && !world.overlap(spot, place)) continue;
      const factor = observation.levels.reduce((most, _, level) => {
        const p = world.chance(a, at, observation, spot, level);
        const q = world.chance(b, place, observation, spot, level);
        return Math.max(most, apart(p, q), apart(1 - p, 1 - q));
      }, 1);
      if (factor <= greatest || !meet(world.settledCars(observation, spot), cars)) continue;
      greatest = factor;
      if (greatest >= enough) return greatest;
    }
  }
  return greatest;
}

function apart(p: number, q: number): number {
  return Math.max(p / q, q / p);
}
