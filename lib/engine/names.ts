import type { CompiledPart, Knowledge } from "../knowledge/schema/compiled.ts";
import type { RankingRow } from "./ranking-rows.ts";

interface Names {
  readonly places: ReadonlyMap<string, string>;
  readonly faults: ReadonlyMap<string, string>;
  readonly parts: ReadonlyMap<string, CompiledPart>;
  /** Names made so far, by fault and then place: every answer asks for all of them again. */
  readonly made: Map<string, Map<string, string>>;
}

const NAMES = new WeakMap<Knowledge, Names>();

function namesOf(knowledge: Knowledge): Names {
  const kept = NAMES.get(knowledge);
  if (kept !== undefined) return kept;
  const names = {
    places: new Map(knowledge.places.places.map((p) => [p.id, p.name])),
    faults: new Map(knowledge.faults.map((f) => [f.id, f.name])),
    parts: new Map(knowledge.parts.map((p) => [p.id, p])),
    made: new Map<string, Map<string, string>>(),
  };
  NAMES.set(knowledge, names);
  return names;
}

/** "front left" as it stands at the head of a line: "Front left". */
export function capital(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}

/** The name of a place: "front left"; the id itself when the knowledge does not hold it. */
export function placeName(knowledge: Knowledge, place: string): string {
  return namesOf(knowledge).places.get(place) ?? place;
}

/** The name of a suspect for people: "front left lower ball joint: worn, with play". */
export function suspectName(
  knowledge: Knowledge,
  suspect: { readonly fault: string; readonly part: string; readonly place: string },
): string {
  return nameAt(knowledge, suspect, placeName(knowledge, suspect.place));
}

/** The name of a line of the ranking for people: "front left or right lower ball joint: worn, with play". */
export function rowName(knowledge: Knowledge, row: RankingRow): string {
  return nameAt(knowledge, row, row.place);
}

/** The name of a part at its place, from `part@place`: "front left lower ball joint"; the id itself for an unknown part. */
export function repairName(knowledge: Knowledge, id: string): string {
  const [part = "", place] = id.split("@");
  const record = namesOf(knowledge).parts.get(part);
  if (record === undefined) return id;
  return place === undefined ? record.name : placedName(record, placeName(knowledge, place));
}

function nameAt(
  knowledge: Knowledge,
  { fault: faultId, part: partId }: { readonly fault: string; readonly part: string },
  place: string,
): string {
  const names = namesOf(knowledge);
  const made = names.made.get(faultId) ?? new Map<string, string>();
  names.made.set(faultId, made);
  const name = made.get(place) ?? newName(names, faultId, partId, place);
  made.set(place, name);
  return name;
}

function newName(names: Names, faultId: string, partId: string, place: string): string {
  const fault = names.faults.get(faultId) ?? faultId;
  const part = names.parts.get(partId);
  return `${part === undefined ? partId : placedName(part, place)}: ${fault}`;
}

function placedName({ name, places }: CompiledPart, place: string): string {
  if (places.length <= 1) return name;
  // "front left" and "front coil spring" say "front" once.
  const axle = place.split(" ")[0] ?? "";
  const bare = name.startsWith(`${axle} `) ? name.slice(axle.length + 1) : name;
  return `${place} ${bare}`;
}
