import type {
  CompiledCheck,
  CompiledComplaint,
  CompiledContext,
  CompiledFault,
  CompiledFeature,
  CompiledObservation,
  CompiledPart,
  Knowledge,
  SourceRecord,
} from "../schema/compiled.ts";
import { type CarNeeds, carNeeds } from "./car-limits.ts";
import { type Cause, causesOfComplaint, causesOfFeature, causesOfObservation } from "./causes.ts";
import type { Facet } from "./feature-keys.ts";
import { type LimitOf, limitsOf } from "./limits-of.ts";
import { recordsOf } from "./records.ts";
import { sourceOf } from "./sources.ts";

export interface ComplaintPage {
  readonly kind: "complaint";
  readonly record: CompiledComplaint;
  readonly causes: readonly Cause[];
  /** Its features by the group that they go together in. */
  readonly groups: readonly { readonly name: string; readonly features: readonly CompiledFeature[] }[];
  readonly source: SourceRecord | undefined;
}

export interface FeaturePage {
  readonly kind: "feature";
  readonly record: CompiledFeature;
  readonly group: string;
  /** For each complaint that it is a feature of, the faults that name it. */
  readonly of: readonly { readonly complaint: CompiledComplaint; readonly causes: readonly Cause[] }[];
  /** Chances that hold for faults that name none of their own, by where the fault sits. */
  readonly usual: readonly { readonly facet: Facet; readonly p: number }[];
  readonly opposite: CompiledFeature | undefined;
}

export interface ObservationPage {
  readonly kind: "observation";
  readonly record: CompiledObservation;
  readonly places: readonly string[];
  readonly needs: readonly CarNeeds[];
  readonly causes: readonly Cause[];
  readonly checks: readonly CompiledCheck[];
  readonly limits: readonly LimitOf[];
  /** Checks that must not be made while it is there. */
  readonly forbids: readonly CompiledCheck[];
  readonly source: SourceRecord | undefined;
}

export interface ContextPage {
  readonly kind: "context";
  readonly record: CompiledContext;
  /** Faults whose odds it moves, raised most first. */
  readonly moves: readonly {
    readonly fault: CompiledFault;
    readonly part: CompiledPart;
    readonly factor: number;
  }[];
}

/** The page of anything that can be told, seen, felt or measured, or that happened to a car. */
export type FindingPage = ComplaintPage | FeaturePage | ObservationPage | ContextPage;

/** The page of a finding; undefined when no finding has that id. */
export function findingPage(knowledge: Knowledge, id: string): FindingPage | undefined {
  const { observations, features } = recordsOf(knowledge);
  const complaint = knowledge.complaints.find((c) => c.id === id);
  if (complaint !== undefined) return complaintPage(knowledge, complaint);
  const feature = features.get(id);
  if (feature !== undefined) return featurePage(knowledge, feature);
  const observation = observations.get(id);
  if (observation !== undefined) return observationPage(knowledge, observation);
  const context = knowledge.contexts.find((c) => c.id === id);
  return context === undefined ? undefined : contextPage(knowledge, context);
}

/** Ids of everything that has such a page; complaints, features, observations and contexts share one set of ids. */
export function findingIds(knowledge: Knowledge): string[] {
  const { complaints, features, observations, contexts } = knowledge;
  return [complaints, features, observations, contexts].flat().map(({ id }) => id);
}

function complaintPage(knowledge: Knowledge, record: CompiledComplaint): ComplaintPage {
  const own = knowledge.features.filter(({ complaints }) => complaints.includes(record.id));
  return {
    kind: "complaint",
    record,
    causes: causesOfComplaint(knowledge, record.id),
    groups: knowledge.groups.groups.flatMap(({ id, name }) => {
      const features = own.filter(({ group }) => group === id);
      return features.length === 0 ? [] : [{ name, features }];
    }),
    source: sourceOf(knowledge, record.basis),
  };
}

function featurePage(knowledge: Knowledge, record: CompiledFeature): FeaturePage {
  const facets = Object.entries(record.relative ?? {}) as [Facet, string][];
  return {
    kind: "feature",
    record,
    group: knowledge.groups.groups.find(({ id }) => id === record.group)?.name ?? record.group,
    of: knowledge.complaints
      .filter(({ id }) => record.complaints.includes(id))
      .map((complaint) => ({ complaint, causes: causesOfFeature(knowledge, record, complaint.id) })),
    usual: facets.flatMap(([facet, key]) => {
      const p = record.defaults?.[key];
      return p === undefined ? [] : [{ facet, p }];
    }),
    opposite: recordsOf(knowledge).features.get(record.opposite ?? ""),
  };
}

function observationPage(knowledge: Knowledge, record: CompiledObservation): ObservationPage {
  const { checksOf, placeName } = recordsOf(knowledge);
  return {
    kind: "observation",
    record,
    places: record.places.map(placeName),
    needs: carNeeds(knowledge, record.when, record.places),
    causes: causesOfObservation(knowledge, record.id),
    checks: checksOf.get(record.id) ?? [],
    limits: limitsOf(knowledge, record.id),
    forbids: knowledge.checks.filter(({ notWhen }) => notWhen.includes(record.id)),
    source: sourceOf(knowledge, record.basis),
  };
}

function contextPage(knowledge: Knowledge, record: CompiledContext): ContextPage {
  const { parts } = recordsOf(knowledge);
  return {
    kind: "context",
    record,
    moves: knowledge.faults
      .flatMap((fault) => {
        const factor = fault.contexts[record.id];
        const part = parts.get(fault.part);
        return factor === undefined || part === undefined ? [] : [{ fault, part, factor }];
      })
      .sort((a, b) => b.factor - a.factor),
  };
}
