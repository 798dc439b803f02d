import Fuse from "fuse.js";
import type { CompiledFault, Knowledge } from "../knowledge/schema/compiled.ts";

/** A record that a search found. */
export interface Found {
  readonly id: string;
  readonly name: string;
  readonly kind: "complaint" | "feature" | "observation" | "context" | "part" | "fault" | "check";
  /** 0 to 1; 1 is a perfect match. */
  readonly score: number;
  /** Part that a fault is of. */
  readonly part?: string;
}

interface Entry {
  readonly id: string;
  readonly part?: string;
  readonly name: string;
  readonly kind: Found["kind"];
  readonly names: readonly string[];
  readonly phrases: readonly string[];
}

interface Named {
  readonly id: string;
  readonly name: string;
  readonly otherNames: readonly string[];
  readonly phrases?: readonly string[];
}

interface Searchers {
  readonly findings: Fuse<Entry>;
  readonly parts: Fuse<Entry>;
  readonly faults: Fuse<Entry>;
  readonly checks: Fuse<Entry>;
}

const SEARCHERS = new WeakMap<Knowledge, Searchers>();
const LIMIT = 12;
const LONGEST_QUERY = 100;

/** Complaints, features, observations and contexts by name, other name or phrase; slips of the pen are forgiven. Best first. */
export function searchFindings(knowledge: Knowledge, query: string, limit = LIMIT): Found[] {
  return find(searchersOf(knowledge).findings, query, limit);
}

/** Parts by trade name, UK or US usage, slang or misspelling. Best first. */
export function searchParts(knowledge: Knowledge, query: string, limit = LIMIT): Found[] {
  return find(searchersOf(knowledge).parts, query, limit);
}

/** Everything that has a name, of all kinds together. Best first; of equals parts, then findings, checks and faults. */
export function searchAll(knowledge: Knowledge, query: string, limit = LIMIT): Found[] {
  const { parts, findings, checks, faults } = searchersOf(knowledge);
  return [parts, findings, checks, faults]
    .flatMap((searcher) => find(searcher, query, limit))
    .sort((a, b) => b.score - a.score)
    .slice(0, Math.max(1, Math.floor(limit)));
}

/** Checks by name. Best first. */
export function searchChecks(knowledge: Knowledge, query: string, limit = LIMIT): Found[] {
  return find(searchersOf(knowledge).checks, query, limit);
}

function find(fuse: Fuse<Entry>, query: string, limit: number): Found[] {
  const wanted = query.trim().slice(0, LONGEST_QUERY);
  if (wanted === "") return [];
  const most = Math.max(1, Math.floor(limit));
  // Its own name first, then another name that is the query itself, however many longer names hold it too.
  return fuse
    .search(wanted)
    .map(({ item, score = 1 }) => ({ item, score, same: sameness(item, wanted) }))
    .sort((a, b) => b.same - a.same)
    .slice(0, most)
    .map(({ item, score, same }) => ({
      id: item.id,
      name: item.name,
      kind: item.kind,
      score: same > 0 ? 1 : Math.round((1 - score) * 1000) / 1000,
      ...(item.part !== undefined && { part: item.part }),
    }));
}

function sameness(entry: Entry, wanted: string): number {
  const asked = wanted.toLowerCase();
  if (entry.name.toLowerCase() === asked) return 2;
  return entry.names.some((name) => name.toLowerCase() === asked) ? 1 : 0;
}

function searchersOf(knowledge: Knowledge): Searchers {
  const kept = SEARCHERS.get(knowledge);
  if (kept !== undefined) return kept;
  const entries = (kind: Found["kind"], records: readonly Named[]) => records.map((r) => entryOf(kind, r));
  const made: Searchers = {
    findings: searcher([
      ...entries("complaint", knowledge.complaints),
      ...entries("feature", knowledge.features),
      ...entries("observation", knowledge.observations),
      ...entries("context", knowledge.contexts),
    ]),
    parts: searcher(
      entries(
        "part",
        knowledge.parts.map((p) => ({ ...p, otherNames: [...p.otherNames, ...p.generalNames] })),
      ),
    ),
    faults: searcher(knowledge.faults.map((fault) => faultEntry(knowledge, fault))),
    checks: searcher(entries("check", knowledge.checks)),
  };
  SEARCHERS.set(knowledge, made);
  return made;
}

function entryOf(kind: Found["kind"], record: Named): Entry {
  const phrases = (record.phrases ?? []).map((phrase) => phrase.replaceAll(/[|=]/gu, " "));
  return { id: record.id, name: record.name, kind, names: [record.name, ...record.otherNames], phrases };
}

/** A fault goes by the name of its part too; "boot torn" alone is the name of many. */
function faultEntry(knowledge: Knowledge, { id, part, name, otherNames }: CompiledFault): Entry {
  const partName = knowledge.parts.find((p) => p.id === part)?.name ?? part;
  const full = `${partName}: ${name}`;
  return {
    id,
    part,
    name: full,
    kind: "fault",
    names: [full, `${name} ${partName}`, ...otherNames],
    phrases: [],
  };
}

function searcher(entries: readonly Entry[]): Fuse<Entry> {
  return new Fuse(entries, {
    keys: [
      { name: "names", weight: 3 },
      { name: "phrases", weight: 1 },
    ],
    includeScore: true,
    ignoreLocation: true,
    ignoreDiacritics: true,
    threshold: 0.35,
    minMatchCharLength: 2,
  });
}
