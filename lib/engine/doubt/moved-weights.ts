import type { CompiledShowing } from "../../knowledge/schema/compiled.ts";
import { weightOf } from "../../knowledge/strengths.ts";
import { standardNormal } from "../../maths/standard-normal.ts";
import type { Gathered } from "../gathered.ts";
import type { ComplaintLink, Grounded } from "../ground.ts";
import { movable, moved, movedGrades } from "../movable.ts";
import type { ObservationNode } from "../observation-nodes.ts";

/** A car and its answers as they would stand if the knowledge's weights were a little different. */
export interface Moved {
  readonly grounded: Grounded;
  readonly gathered: Gathered;
}

/**
 * Prepares draws of other weights: each call moves every weight that the answers touch, in log-odds, by its spread times a
 * normal number.
 *
 * One fault moves alike at every place, and all grades of a link together. What the answers do not touch is left out of the
 * result, so it is good for weighing these answers and nothing else.
 * Priors and leaks move by the spreads that the knowledge states for them, or stay when it states none.
 */
export function movedWeights(grounded: Grounded, gathered: Gathered, uniform: () => number): () => Moved {
  const normal = (): number => standardNormal(uniform);
  const spreads = grounded.knowledge.doubt?.spreads;
  const leakSpread = spreads?.leaks.spread ?? 0;
  const prior = priorMover(grounded, spreads?.priors.spread ?? 0);
  const showings = showingMover(grounded, gathered);
  const nodes = nodeMover(grounded, gathered, leakSpread);
  return () => {
    const complaints = new Map(
      [...gathered.complaints].map(([id, told]) => {
        const leak = moved(movable(told.complaint.leak, leakSpread), normal());
        return [id, { ...told, complaint: { ...told.complaint, leak } }];
      }),
    );
    return {
      grounded: { ...grounded, prior: prior(normal), links: showings(normal), nodes: nodes(normal) },
      gathered: { ...gathered, complaints },
    };
  };
}

function priorMover(grounded: Grounded, spread: number): (normal: () => number) => Float64Array {
  const at = Array.from(grounded.prior, (p) => movable(p, spread));
  const faults = [...new Set(grounded.suspects.map((s) => s.fault))];
  const index = new Map(faults.map((fault, k) => [fault, k]));
  const faultOf = grounded.suspects.map((s) => index.get(s.fault) ?? 0);
  return (normal) => {
    const by = faults.map(() => normal());
    return Float64Array.from(at, (prior, i) => moved(prior, by[faultOf[i] ?? 0] ?? 0));
  };
}

/** Moves what faults show as the complaints that were answered: strengths, and the features that were told. */
function showingMover(
  grounded: Grounded,
  gathered: Gathered,
): (normal: () => number) => Map<string, ComplaintLink[]> {
  const { words } = grounded.knowledge.scale;
  const prepared = [...gathered.complaints].map(([id, { features }]) => {
    const keys = new Set(
      features.flatMap(({ feature }) => [feature.id, ...Object.values(feature.relative ?? {})]),
    );
    const links = grounded.links.get(id) ?? [];
    const distinct = [...new Set(links.flatMap((link) => link.showings))].map((showing) => ({
      showing,
      strength: movable(showing.strength.p, showing.strength.spread),
      features: Object.entries(showing.features)
        .filter(([key]) => keys.has(key))
        .map(([key, p]) => ({ key, chance: movable(p, weightOf(p, words, "")?.spread ?? 0) })),
    }));
    return { id, links, distinct };
  });
  return (normal) =>
    new Map(
      prepared.map(({ id, links, distinct }) => {
        const now = new Map<CompiledShowing, CompiledShowing>();
        for (const { showing, strength, features } of distinct) {
          now.set(showing, {
            complaint: showing.complaint,
            strength: { ...showing.strength, p: moved(strength, normal()) },
            features: Object.fromEntries(features.map(({ key, chance }) => [key, moved(chance, normal())])),
          });
        }
        return [
          id,
          links.map((link) => ({
            suspect: link.suspect,
            showings: link.showings.map((showing) => now.get(showing) ?? showing),
          })),
        ];
      }),
    );
}

/** Moves the observations that were answered, at every place that the answer may speak of. */
function nodeMover(
  grounded: Grounded,
  gathered: Gathered,
  leakSpread: number,
): (normal: () => number) => Map<string, ObservationNode> {
  const wanted = new Map<string, ObservationNode>();
  for (const { observation, place } of gathered.observations) {
    for (const at of observation.places) {
      const node = grounded.nodes.get(`${observation.id}@${at}`);
      if (node !== undefined && (place === undefined || grounded.places.overlap(at, place))) {
        wanted.set(node.id, node);
      }
    }
  }
  const prepared = [...wanted.values()].map((node) => ({
    node,
    leak: node.leak.map((p) => movable(p, leakSpread)),
    parents: Array.from(node.parents, (suspect, k) => {
      const fault = grounded.suspects[suspect]?.fault ?? "";
      const levels = grounded.faults
        .get(fault)
        ?.links.find((link) => link.observation === node.observation.id)?.levels;
      return {
        key: `${fault} ${node.observation.id}`,
        grades: node.strengths.map((row, level) => movable(row[k] ?? 0, levels?.[level]?.spread ?? 0)),
      };
    }),
  }));
  return (normal) => {
    const by = new Map<string, number>();
    const drawn = (key: string): number => {
      const known = by.get(key) ?? normal();
      by.set(key, known);
      return known;
    };
    return new Map(
      prepared.map(({ node, leak, parents }) => {
        const rows = parents.map(({ key, grades }) => movedGrades(grades, drawn(key)));
        const strengths = node.strengths.map((_, level) => Float64Array.from(rows, (row) => row[level] ?? 0));
        return [node.id, { ...node, strengths, leak: movedGrades(leak, drawn(node.observation.id)) }];
      }),
    );
  };
}
