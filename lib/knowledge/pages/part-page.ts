import type { CompiledPart, Knowledge } from "../schema/compiled.ts";
import { type CarNeeds, carNeeds } from "./car-limits.ts";
import { type FaultEntry, faultEntry } from "./fault-entry.ts";
import { recordsOf } from "./records.ts";

/** Everything that the page of a part says. */
export interface PartPage {
  readonly part: CompiledPart;
  readonly places: readonly string[];
  /** Ways in which a car can have it; empty for every car. */
  readonly needs: readonly CarNeeds[];
  /** Gravest first. */
  readonly faults: readonly FaultEntry[];
}

const GRAVITY = { dangerous: 0, major: 1, minor: 2 } as const;

/** The page of a part; undefined when there is no such part. */
export function partPage(knowledge: Knowledge, id: string): PartPage | undefined {
  const { parts, faultsOf, placeName } = recordsOf(knowledge);
  const part = parts.get(id);
  if (part === undefined) return undefined;
  return {
    part,
    places: part.places.map(placeName),
    needs: carNeeds(knowledge, part.when, part.places),
    faults: (faultsOf.get(id) ?? [])
      .map((fault) => faultEntry(knowledge, fault))
      .sort((a, b) => GRAVITY[a.fault.severity.word] - GRAVITY[b.fault.severity.word]),
  };
}
