import type { CompiledFault, CompiledFeature, CompiledPart, Knowledge, Weight } from "../schema/compiled.ts";
import { type Facet, facetsOf } from "./feature-keys.ts";
import { recordsOf } from "./records.ts";

/** A fault that gives a finding, and how often. */
export interface Cause {
  readonly fault: CompiledFault;
  readonly part: CompiledPart;
  /** Chance of at least each grade, weakest first; one for a plain yes or no. */
  readonly weights: readonly Weight[];
  /** Index of the grade from which the finding proves the fault. */
  readonly provesFrom?: number;
  /** Side or axle of the fault for which it holds, of a sided feature. */
  readonly facet?: Facet;
}

/** Faults that give an observation: those that it proves first, then by strength. */
export function causesOfObservation(knowledge: Knowledge, id: string): Cause[] {
  const causes = knowledge.faults.flatMap((fault) => {
    const link = fault.links.find(({ observation }) => observation === id);
    const proof = fault.decisive.filter(({ observation }) => observation === id).map(({ level }) => level);
    return link === undefined
      ? []
      : causeOf(knowledge, fault, link.levels, proof.length > 0 ? { provesFrom: Math.min(...proof) } : {});
  });
  return strongestFirst(causes);
}

/** Faults that show as a complaint, the strongest first. */
export function causesOfComplaint(knowledge: Knowledge, id: string): Cause[] {
  return strongestFirst(
    knowledge.faults.flatMap((fault) => {
      const showings = fault.shows.filter(({ complaint }) => complaint === id).map((s) => s.strength);
      const [strongest] = showings.sort((a, b) => b.p - a.p);
      return strongest === undefined ? [] : causeOf(knowledge, fault, [strongest], {});
    }),
  );
}

/**
 * Faults that name a feature of a complaint, most frequent first; the chance is given that the complaint is there.
 *
 * A sided feature is listed once for each side or axle for which the fault names a chance of its own.
 */
export function causesOfFeature(knowledge: Knowledge, feature: CompiledFeature, complaint: string): Cause[] {
  const { parts } = recordsOf(knowledge);
  const causes = knowledge.faults.flatMap((fault) => {
    const at = parts.get(fault.part)?.places ?? [];
    const places = knowledge.places.places.filter(({ id }) => at.includes(id));
    return fault.shows
      .filter((showing) => showing.complaint === complaint)
      .flatMap(({ features, strength }) => {
        const cause = (p: number, facet: { facet?: Facet }) =>
          causeOf(knowledge, fault, [{ ...strength, p }], facet);
        const plain = features[feature.id];
        if (plain !== undefined) return cause(plain, {});
        return facetsOf(feature, places).flatMap((facet) => {
          const p = features[feature.relative?.[facet] ?? ""];
          return p === undefined ? [] : cause(p, { facet });
        });
      });
  });
  return strongestOfEach(strongestFirst(causes));
}

/** A fault that shows a complaint in two ways counts by the one that has the feature more often. */
function strongestOfEach(causes: readonly Cause[]): Cause[] {
  const seen = new Set<string>();
  return causes.filter(({ fault, facet }) => {
    const key = `${fault.id} ${facet}`;
    const first = !seen.has(key);
    seen.add(key);
    return first;
  });
}

function causeOf(
  knowledge: Knowledge,
  fault: CompiledFault,
  weights: readonly Weight[],
  more: Pick<Cause, "provesFrom" | "facet">,
): Cause[] {
  const part = recordsOf(knowledge).parts.get(fault.part);
  return part === undefined ? [] : [{ fault, part, weights, ...more }];
}

function strongestFirst(causes: Cause[]): Cause[] {
  const proves = ({ provesFrom }: Cause) => (provesFrom === undefined ? 0 : 1);
  const first = ({ weights }: Cause) => weights[0]?.p ?? 0;
  return causes.sort((a, b) => proves(b) - proves(a) || first(b) - first(a));
}
