import type { CompiledObservation, Knowledge } from "../schema/compiled.ts";
import { causesOfObservation } from "./causes.ts";

/** Findings of one kind under one heading. */
export interface FindingsGroup {
  readonly name: string;
  readonly findings: readonly { readonly id: string; readonly name: string }[];
}

/** All findings: what is complained of, its features, what checks find, what happened lately. */
export interface FindingsIndex {
  readonly complaints: FindingsGroup["findings"];
  readonly features: readonly FindingsGroup[];
  /** By the group of the part that gives them most often. */
  readonly observations: readonly FindingsGroup[];
  readonly contexts: FindingsGroup["findings"];
}

interface Named {
  readonly id: string;
  readonly name: string;
  readonly ended?: unknown;
}

/** All findings in groups that can be looked through. */
export function findingsIndex(knowledge: Knowledge): FindingsIndex {
  const partGroup = (observation: CompiledObservation): string =>
    causesOfObservation(knowledge, observation.id)[0]?.part.group.replaceAll("-", " ") ?? "other";
  const observations = grouped(knowledge.observations, partGroup);
  return {
    complaints: listed(knowledge.complaints),
    features: knowledge.groups.groups.flatMap(({ id, name }) => {
      const findings = listed(knowledge.features.filter(({ group }) => group === id));
      return findings.length === 0 ? [] : [{ name, findings }];
    }),
    observations: observations.sort((a, b) => b.findings.length - a.findings.length),
    contexts: listed(knowledge.contexts),
  };
}

function grouped<T extends Named>(records: readonly T[], nameOf: (record: T) => string): FindingsGroup[] {
  const groups = new Map<string, T[]>();
  for (const record of records) groups.set(nameOf(record), [...(groups.get(nameOf(record)) ?? []), record]);
  return [...groups].map(([name, own]) => ({ name, findings: listed(own) }));
}

function listed(records: readonly Named[]): FindingsGroup["findings"] {
  return records
    .filter(({ ended }) => ended === undefined)
    .map(({ id, name }) => ({ id, name }))
    .sort((a, b) => (a.name < b.name ? -1 : 1));
}
