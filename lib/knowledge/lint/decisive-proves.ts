import type { CompiledFault, CompiledObservation } from "../schema/compiled.ts";
import type { LintFinding, LintRule } from "./rule.ts";
import { anyCar, both, type LintWorld, meet } from "./world.ts";

/**
 * Least ratio of chances for a finding to prove a fault.
 *
 * Source  a likelihood ratio above 10 is commonly taken as a large, often conclusive shift: Jaeschke, Guyatt and Sackett,
 *         Users' Guides to the Medical Literature III, JAMA 271 (1994), from memory.
 */
export const PROOF_RATIO = 10;

/** A decisive finding speaks for its fault against every other cause at that place. */
export const decisiveProves: LintRule = {
  name: "decisive-proves",
  about: `A decisive finding is checked, and ${PROOF_RATIO} times likelier from its fault than from the leak or a fault of another part at that place.`,
  check: (world) => {
    const found: LintFinding[] = [];
    for (const fault of world.knowledge.faults) {
      for (const { observation: id, level } of fault.decisive) {
        const observation = world.observations.get(id);
        if (observation === undefined) continue;
        const rivals = rivalsOf(world, fault, observation, level);
        if (rivals.length === 0) continue;
        const grade = observation.levels.length > 1 ? `${id}:${observation.levels[level]}` : id;
        found.push({
          record: `faults/${fault.id}.json`,
          message: `"${grade}" does not prove it: ${rivals.join("; ")}`,
          mend: "Name a finding that only this fault gives, mend the strengths, or list the exception with why.",
        });
      }
    }
    return found;
  },
};

/** Causes that the finding does not rule against, each with its ratio. */
function rivalsOf(
  world: LintWorld,
  fault: CompiledFault,
  observation: CompiledObservation,
  level: number,
): string[] {
  const strength = fault.links.find((link) => link.observation === observation.id)?.levels[level]?.p;
  if (strength === undefined) return ["the fault is not linked to it"];
  const rivals = new Map<string, number>();
  const note = (name: string, ratio: number) => {
    if (ratio < PROOF_RATIO) rivals.set(name, Math.min(ratio, rivals.get(name) ?? ratio));
  };
  const others = world.knowledge.faults.filter(
    (other) => other.part !== fault.part && other.links.some((link) => link.observation === observation.id),
  );
  let settled = false;
  for (const at of world.placesOf(fault)) {
    for (const place of observation.places) {
      if (!world.overlap(at, place)) continue;
      const cars = both(world.faultCars(fault, at), world.settledCars(observation, place));
      if (!anyCar(cars)) continue;
      settled = true;
      const chance = world.chance(fault, at, observation, place, level);
      note("the leak", chance / (observation.leak[level] ?? 1));
      for (const other of others) {
        for (const spot of world.placesOf(other)) {
          if (!world.overlap(spot, place) || !meet(world.faultCars(other, spot), cars)) continue;
          note(other.id, chance / world.chance(other, spot, observation, place, level));
        }
      }
    }
  }
  if (!settled) return ["no check settles it where the fault is"];
  return [...rivals].map(([name, ratio]) => `only ${ratio.toFixed(1)} times likelier than from ${name}`);
}
