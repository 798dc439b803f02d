import type { CompiledFault, Knowledge, SourceRecord } from "../schema/compiled.ts";

/** One source and what it stands behind. */
export interface SourceUse {
  readonly source: SourceRecord;
  readonly behind: readonly SourceTopic[];
}

/** What a number or a statement of a fault says. */
export type SourceTopic = "life" | "shows" | "links" | "severity";

/** Where everything that is said of a fault comes from, in the order in which it is said. */
export function sourcesOf(knowledge: Knowledge, fault: CompiledFault): SourceUse[] {
  const uses = new Map<string, Set<SourceTopic>>();
  const note = (basis: string, topic: SourceTopic) =>
    uses.set(basis, (uses.get(basis) ?? new Set<SourceTopic>()).add(topic));
  for (const { strength } of fault.shows) note(strength.basis, "shows");
  for (const { levels } of fault.links) for (const { basis } of levels) note(basis, "links");
  note(fault.life.basis, "life");
  note(fault.severity.basis, "severity");
  return [...uses].flatMap(([id, topics]) => {
    const source = sourceOf(knowledge, id);
    return source === undefined ? [] : [{ source, behind: [...topics] }];
  });
}

/** The source record of a basis. */
export function sourceOf(knowledge: Knowledge, basis: string): SourceRecord | undefined {
  return knowledge.sources.find(({ id }) => id === basis);
}
