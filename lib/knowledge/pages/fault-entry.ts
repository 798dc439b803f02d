import type {
  CompiledCheck,
  CompiledComplaint,
  CompiledContext,
  CompiledFault,
  CompiledObservation,
  CompiledPart,
  Knowledge,
  Weight,
} from "../schema/compiled.ts";
import { type CarNeeds, carNeeds } from "./car-limits.ts";
import { featuresOfKey, type KeyedFeature } from "./feature-keys.ts";
import { type LimitOf, limitsOf } from "./limits-of.ts";
import { recordsOf } from "./records.ts";
import { type SourceUse, sourcesOf } from "./sources.ts";
import { type WearCurve, wearCurve } from "./wear-curve.ts";

/** A feature of a showing and how often it is there when the complaint is. */
export interface ShownFeature extends KeyedFeature {
  readonly p: number;
}

/** One complaint that a fault gives. */
export interface Shown {
  readonly complaint: CompiledComplaint;
  readonly strength: Weight;
  /** Most frequent first. */
  readonly features: readonly ShownFeature[];
}

/** One observation that a fault gives, and the checks that make it. */
export interface Seen {
  readonly observation: CompiledObservation;
  /** Chance of at least each grade, weakest first. */
  readonly grades: readonly { readonly name: string; readonly weight: Weight }[];
  /** Index of the grade from which it proves the fault; left out when it does not prove it. */
  readonly provesFrom?: number;
  readonly checks: readonly CompiledCheck[];
  readonly limits: readonly LimitOf[];
}

/** A part that is renewed with another. */
export interface PairedPart {
  readonly part: CompiledPart;
  readonly where: "same-place" | "other-side" | "both-sides";
  readonly why: string;
}

/** Everything that a page says of one way in which a part fails. */
export interface FaultEntry {
  readonly fault: CompiledFault;
  /** Cars on which the part can fail so, beyond having the part. */
  readonly needs: readonly CarNeeds[];
  readonly shown: readonly Shown[];
  /** Decisive ones first, then by strength. */
  readonly seen: readonly Seen[];
  readonly curve: WearCurve | undefined;
  /** Contexts that move its odds, the strongest first. */
  readonly contexts: readonly { readonly context: CompiledContext; readonly factor: number }[];
  readonly paired: readonly PairedPart[];
  readonly cautions: readonly string[];
  readonly inseparable: readonly { readonly fault: CompiledFault; readonly why: string }[];
  readonly sources: readonly SourceUse[];
}

/** Collects what a page says of a fault. */
export function faultEntry(knowledge: Knowledge, fault: CompiledFault): FaultEntry {
  const { parts, faults } = recordsOf(knowledge);
  const places = parts.get(fault.part)?.places ?? [];
  return {
    fault,
    needs: carNeeds(knowledge, fault.when, places),
    shown: shownBy(knowledge, fault, places),
    seen: seenOf(knowledge, fault),
    curve: wearCurve(fault.life),
    contexts: knowledge.contexts
      .flatMap((context) => {
        const factor = fault.contexts[context.id];
        return factor === undefined ? [] : [{ context, factor }];
      })
      .sort((a, b) => b.factor - a.factor),
    paired: fault.remedy.paired.flatMap(({ part: id, ...rest }) => {
      const part = parts.get(id);
      return part === undefined ? [] : [{ part, ...rest }];
    }),
    cautions: fault.remedy.cautions.flatMap((id) =>
      knowledge.cautions.flatMap((caution) => (caution.id === id ? [caution.text] : [])),
    ),
    inseparable: fault.inseparable.flatMap(({ fault: id, why }) => {
      const other = faults.get(id);
      return other === undefined ? [] : [{ fault: other, why }];
    }),
    sources: sourcesOf(knowledge, fault),
  };
}

function shownBy(knowledge: Knowledge, fault: CompiledFault, at: readonly string[]): Shown[] {
  const places = knowledge.places.places.filter(({ id }) => at.includes(id));
  return fault.shows
    .flatMap(({ complaint: id, strength, features }) => {
      const complaint = knowledge.complaints.find((c) => c.id === id);
      if (complaint === undefined) return [];
      const listed = Object.entries(features).flatMap(([key, p]) =>
        featuresOfKey(knowledge, key, places).map((keyed) => ({ ...keyed, p })),
      );
      return [{ complaint, strength, features: listed.sort((a, b) => b.p - a.p) }];
    })
    .sort((a, b) => b.strength.p - a.strength.p);
}

function seenOf(knowledge: Knowledge, fault: CompiledFault): Seen[] {
  const { observations, checksOf } = recordsOf(knowledge);
  const seen = fault.links.flatMap(({ observation: id, levels }): Seen[] => {
    const observation = observations.get(id);
    if (observation === undefined) return [];
    const proof = fault.decisive.filter((d) => d.observation === id).map((d) => d.level);
    return [
      {
        observation,
        grades: levels.map((weight, i) => ({ name: observation.levels[i] ?? "present", weight })),
        ...(proof.length > 0 && { provesFrom: Math.min(...proof) }),
        checks: checksOf.get(id) ?? [],
        limits: limitsOf(knowledge, id),
      },
    ];
  });
  const first = ({ grades }: Seen) => grades[0]?.weight.p ?? 0;
  const proves = ({ provesFrom }: Seen) => (provesFrom === undefined ? 0 : 1);
  return seen.sort((a, b) => proves(b) - proves(a) || first(b) - first(a));
}
