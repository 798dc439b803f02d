import type { Car } from "../car/car.ts";
import type { CompiledFault, CompiledObservation, Knowledge } from "../knowledge/schema/compiled.ts";
import type { PlaceIndex } from "./place-index.ts";
import { possibleHere } from "./possible-here.ts";
import type { Suspect } from "./suspect.ts";

/** An observation at a place (or anywhere): which suspects give it, how often, and the leak, one value a grade. */
export interface ObservationNode {
  /** `observation@place`, or `observation` for anywhere. */
  readonly id: string;
  readonly observation: CompiledObservation;
  readonly place: string | undefined;
  readonly parents: Int32Array;
  /** strengths[level][k]: chance that parents[k] alone gives at least that grade; never rises with the grade. */
  readonly strengths: readonly Float64Array[];
  readonly leak: readonly number[];
}

type Link = CompiledFault["links"][number];

/** Every observation at each of its places where some suspect can give it. */
export function buildNodes(
  knowledge: Knowledge,
  car: Car,
  suspects: readonly Suspect[],
  faults: ReadonlyMap<string, CompiledFault>,
  places: PlaceIndex,
): Map<string, ObservationNode> {
  const givers = new Map<string, { suspect: Suspect; levels: Link["levels"] }[]>();
  for (const suspect of suspects) {
    for (const link of faults.get(suspect.fault)?.links ?? []) {
      const list = givers.get(link.observation) ?? [];
      givers.set(link.observation, list);
      list.push({ suspect, levels: link.levels });
    }
  }
  const nodes = new Map<string, ObservationNode>();
  for (const observation of knowledge.observations) {
    for (const place of observation.places) {
      const here = (givers.get(observation.id) ?? []).filter((g) => places.overlap(g.suspect.place, place));
      if (here.length === 0 || !possibleHere(knowledge, car, places, observation.when, place)) continue;
      const id = `${observation.id}@${place}`;
      // What no car of this kind may have cannot be found on it by chance either: a leak needs the part as well.
      const exists = here.reduce((most, g) => Math.max(most, g.suspect.exists), 0);
      nodes.set(id, {
        id,
        observation,
        place,
        parents: Int32Array.from(here, (g) => g.suspect.index),
        strengths: observation.levels.map((_, level) =>
          Float64Array.from(here, (g) => g.levels[level]?.p ?? 0),
        ),
        leak: observation.levels.map(
          (_, level) => exists * (observation.leak[level] ?? observation.leak[0] ?? 0),
        ),
      });
    }
  }
  return nodes;
}

/**
 * One node that is present when any of the given ones is: the same observation at one of several places.
 *
 * Strengths and leaks join as independent chances, so that the result is a noisy-OR again.
 */
export function joinNodes(
  id: string,
  nodes: readonly ObservationNode[],
  place: string | undefined,
): ObservationNode {
  const first = nodes[0];
  if (first === undefined) throw new RangeError("joinNodes needs at least one node");
  const rows = new Map<number, number[]>();
  const levels = first.observation.levels.length;
  for (const node of nodes) {
    node.parents.forEach((suspect, k) => {
      const quiet = rows.get(suspect) ?? new Array<number>(levels).fill(1);
      rows.set(suspect, quiet);
      for (let level = 0; level < levels; level++) {
        quiet[level] = (quiet[level] ?? 1) * (1 - (node.strengths[level]?.[k] ?? 0));
      }
    });
  }
  const parents = [...rows.keys()].sort((a, b) => a - b);
  return {
    id,
    observation: first.observation,
    place,
    parents: Int32Array.from(parents),
    strengths: first.observation.levels.map((_, level) =>
      Float64Array.from(parents, (s) => 1 - (rows.get(s)?.[level] ?? 1)),
    ),
    leak: first.observation.levels.map(
      (_, level) => 1 - nodes.reduce((quiet, n) => quiet * (1 - (n.leak[level] ?? 0)), 1),
    ),
  };
}
