import type {
  CompiledCheck,
  CompiledFault,
  CompiledFeature,
  CompiledObservation,
  CompiledPart,
  Knowledge,
} from "../schema/compiled.ts";

/** Look-ups that the pages of one knowledge share. */
export interface Records {
  readonly parts: ReadonlyMap<string, CompiledPart>;
  readonly faults: ReadonlyMap<string, CompiledFault>;
  readonly features: ReadonlyMap<string, CompiledFeature>;
  readonly observations: ReadonlyMap<string, CompiledObservation>;
  /** Checks that settle an observation. */
  readonly checksOf: ReadonlyMap<string, readonly CompiledCheck[]>;
  readonly faultsOf: ReadonlyMap<string, readonly CompiledFault[]>;
  readonly placeName: (id: string) => string;
}

const KEPT = new WeakMap<Knowledge, Records>();

/** The look-ups of a knowledge, made once. */
export function recordsOf(knowledge: Knowledge): Records {
  const kept = KEPT.get(knowledge);
  if (kept !== undefined) return kept;
  const checksOf = new Map<string, CompiledCheck[]>();
  for (const check of knowledge.checks)
    for (const id of check.settles) checksOf.set(id, [...(checksOf.get(id) ?? []), check]);
  const faultsOf = new Map<string, CompiledFault[]>();
  for (const fault of knowledge.faults)
    faultsOf.set(fault.part, [...(faultsOf.get(fault.part) ?? []), fault]);
  const places = new Map(knowledge.places.places.map((place) => [place.id, place.name]));
  const made: Records = {
    parts: byId(knowledge.parts),
    faults: byId(knowledge.faults),
    features: byId(knowledge.features),
    observations: byId(knowledge.observations),
    checksOf,
    faultsOf,
    placeName: (id) => places.get(id) ?? id,
  };
  KEPT.set(knowledge, made);
  return made;
}

function byId<T extends { readonly id: string }>(records: readonly T[]): Map<string, T> {
  return new Map(records.map((record) => [record.id, record]));
}
