import type { CompiledCheck } from "../knowledge/schema/compiled.ts";
import type { CheckFinding } from "./core/index.ts";
import type { Grounded } from "./ground.ts";
import type { ObservationNode } from "./observation-nodes.ts";
import { possibleHere } from "./possible-here.ts";

/** A check at a place of this car, with the findings that it settles there. */
export interface PlacedCheck {
  /** `check@place` */
  readonly id: string;
  readonly check: CompiledCheck;
  readonly place: string;
  readonly nodes: readonly ObservationNode[];
  /** The nodes as the core reads them, aligned to `nodes`. */
  readonly findings: readonly CheckFinding[];
}

const PLACED = new WeakMap<Grounded, readonly PlacedCheck[]>();

/** Every check at every place where it can settle something on this car. */
export function placedChecks(grounded: Grounded): readonly PlacedCheck[] {
  const kept = PLACED.get(grounded);
  if (kept !== undefined) return kept;
  const { knowledge, car, places } = grounded;
  const placed: PlacedCheck[] = [];
  for (const check of knowledge.checks) {
    for (const place of check.places) {
      if (!possibleHere(knowledge, car, places, check.when, place)) continue;
      const nodes = check.settles.flatMap((id) => nodesAt(grounded, id, place));
      if (nodes.length === 0) continue;
      placed.push({ id: `${check.id}@${place}`, check, place, nodes, findings: nodes.map(asCheckFinding) });
    }
  }
  PLACED.set(grounded, placed);
  return placed;
}

/** The node as the core's check finding: chances to stay at or below each grade. */
function asCheckFinding(node: ObservationNode): CheckFinding {
  return {
    parents: node.parents,
    q: node.strengths.map((row) => Float64Array.from(row, (s) => 1 - s)),
    leakQ: node.leak.map((leak) => 1 - leak),
  };
}

function nodesAt(grounded: Grounded, observation: string, place: string): ObservationNode[] {
  const exact = grounded.nodes.get(`${observation}@${place}`);
  if (exact !== undefined) return [exact];
  return [...grounded.places.byId.keys()].flatMap((p) =>
    grounded.places.overlap(p, place) ? (grounded.nodes.get(`${observation}@${p}`) ?? []) : [],
  );
}
