import type { CompiledComplaint, CompiledFeature } from "../../knowledge/schema/compiled.ts";
import { hashedUniform } from "../../maths/hashed-uniform.ts";
import type { Answer } from "../answers.ts";
import { showingStrength } from "../complaint-bit.ts";
import { featureChance } from "../feature-chance.ts";
import type { Grounded } from "../ground.ts";
import { toldTrust } from "../told-trust.ts";
import { pickByWeight } from "./complaint-chance.ts";
import type { FiredShowing } from "./simulated-car.ts";

/**
 * What the owner says when asked for a feature of the complaint: as it is with the fault that is heard, or, as often as
 * told features mislead, as it is with any car. The same each time it is asked.
 */
export function tellsFeature(
  world: Grounded,
  seed: number,
  complaint: string,
  feature: CompiledFeature,
  heard: FiredShowing | undefined,
): boolean {
  const place = world.places.byId.get(world.suspects[heard?.suspect ?? -1]?.place ?? "");
  const key = `${complaint}:${feature.id}`;
  const asItIs = hashedUniform(seed, `${key} heeded`) < toldTrust(world.knowledge, feature);
  const chance =
    heard === undefined || place === undefined || !asItIs
      ? feature.background
      : featureChance(feature, heard.showing, place);
  return hashedUniform(seed, key) < chance;
}

/**
 * Features that the owner is asked for or speaks of by himself, as many as wanted: common ones first and foremost, one of
 * each group until the groups run out. Which ones does not depend on what is wrong with the car, so that their being told
 * says nothing; only the answers do.
 */
export function toldFeatures(
  world: Grounded,
  complaint: CompiledComplaint,
  count: number,
  seed: number,
  heard: FiredShowing | undefined,
  uniform: () => number,
): Answer[] {
  const open = new Set(world.knowledge.features.filter((f) => f.complaints.includes(complaint.id)));
  const common = commonFeatures(world, complaint);
  const told: Answer[] = [];
  let groups = new Set<string>();
  while (told.length < count && open.size > 0) {
    let choice = [...open].filter((f) => !groups.has(f.group));
    if (choice.length === 0) {
      groups = new Set();
      choice = [...open];
    }
    const feature = pickByWeight(choice, (f) => common.get(f.id) ?? 0, uniform);
    if (feature === undefined) break;
    open.delete(feature);
    groups.add(feature.group);
    const present = tellsFeature(world, seed, complaint.id, feature, heard);
    told.push({
      finding: `${complaint.id}:${feature.id}`,
      state: present ? "present" : "absent",
      by: "report",
    });
  }
  return told;
}

const COMMON = new WeakMap<Grounded, Map<string, ReadonlyMap<string, number>>>();

/** Chance of every feature of a complaint over all that may cause it. */
function commonFeatures(world: Grounded, complaint: CompiledComplaint): ReadonlyMap<string, number> {
  const kept = COMMON.get(world) ?? new Map<string, ReadonlyMap<string, number>>();
  COMMON.set(world, kept);
  const known = kept.get(complaint.id);
  if (known !== undefined) return known;
  const links = world.links.get(complaint.id) ?? [];
  const chances = new Map<string, number>();
  for (const feature of world.knowledge.features) {
    if (!feature.complaints.includes(complaint.id)) continue;
    let weight = complaint.leak;
    let sum = complaint.leak * feature.background;
    for (const { suspect, showings } of links) {
      const place = world.places.byId.get(world.suspects[suspect]?.place ?? "");
      if (place === undefined) continue;
      const fires = (world.prior[suspect] ?? 0) * showingStrength(showings);
      const chance = showings.reduce((all, s) => all + featureChance(feature, s, place), 0) / showings.length;
      weight += fires;
      sum += fires * chance;
    }
    chances.set(feature.id, sum / weight);
  }
  kept.set(complaint.id, chances);
  return chances;
}
