import type { Knowledge } from "../../lib/knowledge/schema/compiled.ts";
import type { RECORD_KINDS } from "../../lib/knowledge/index.ts";

type Kind = (typeof RECORD_KINDS)[number];

const KINDS: { readonly [K in Kind]: readonly [string, string] } = {
  parts: ["part", "parts"],
  faults: ["fault", "faults"],
  complaints: ["complaint", "complaints"],
  features: ["feature of complaints", "features of complaints"],
  observations: ["observation", "observations"],
  contexts: ["thing that happened lately", "things that happened lately"],
  checks: ["check", "checks"],
  cautions: ["caution", "cautions"],
  sources: ["source", "sources"],
  layouts: ["drawing", "drawings"],
  demoCases: ["case to try", "cases to try"],
};

/** "1 part", "12 parts". */
export function countOf(kind: Kind, count: number): string {
  return `${count} ${KINDS[kind][count === 1 ? 0 : 1]}`;
}

const FILES: Readonly<Record<string, string>> = {
  scale: "the words for how often",
  places: "the places of a car",
  car: "what is asked of a car",
  setUps: "the set-ups and the minutes between them",
  reports: "how far a customer's words are trusted",
  groups: "which features go together",
  words: "how free text is read",
  costs: "the costs of repairs and of being wrong",
  orders: "the vibration orders",
  limits: "the limits of free play, run-out and wear",
  publishedShares: "the published inspection shares",
};

/** What a single file holds. */
export function fileWords(name: string): string {
  return FILES[name] ?? name;
}

/** Name of a record for people; a fault with its part. */
export function nameOfRecord(knowledge: Knowledge, kind: Kind, id: string): string {
  const list: readonly { readonly id: string }[] = knowledge[kind];
  const record = list.find((entry) => entry.id === id) as
    | { name?: string; title?: string; part?: string }
    | undefined;
  const name = record?.name ?? record?.title ?? id.replaceAll("-", " ");
  if (record?.part === undefined) return name;
  return `${knowledge.parts.find((part) => part.id === record.part)?.name ?? record.part}: ${name}`;
}
