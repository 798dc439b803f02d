import type { Knowledge } from "../knowledge/schema/compiled.ts";

/** The name of a place: "front left"; the id itself when the knowledge does not hold it. */
export function placeName(knowledge: Knowledge, place: string): string {
  return knowledge.places.places.find((p) => p.id === place)?.name ?? place;
}

/** The name of a suspect for people: "front left lower ball joint: worn, with play". */
export function suspectName(
  knowledge: Knowledge,
  suspect: { readonly fault: string; readonly part: string; readonly place: string },
): string {
  const fault = knowledge.faults.find((f) => f.id === suspect.fault)?.name ?? suspect.fault;
  const part = knowledge.parts.find((p) => p.id === suspect.part);
  const name = part?.name ?? suspect.part;
  const only = (part?.places.length ?? 0) <= 1;
  return only ? `${name}: ${fault}` : `${placeName(knowledge, suspect.place)} ${name}: ${fault}`;
}
