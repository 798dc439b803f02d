import { findingName } from "../../lib/engine/finding-id.ts";
import { capital, repairName, suspectName } from "../../lib/engine/names.ts";
import type { Knowledge } from "../../lib/knowledge/schema/compiled.ts";

/** Name of a finding; the id itself when the knowledge does not hold it (a case weighed with another release). */
export function nameOfFinding(knowledge: Knowledge, id: string): string {
  try {
    return findingName(knowledge, id);
  } catch {
    return id;
  }
}

/** Name of a finding where the place is already said; the full name when it lies elsewhere. */
export function nameOfFindingAt(knowledge: Knowledge, id: string, place: string | undefined): string {
  const [head = "", at] = id.split("@");
  const observation = at !== undefined && at === place && knowledge.observations.find((o) => o.id === head);
  return observation ? observation.name : nameOfFinding(knowledge, id);
}

/** Name of a place; empty for none. */
export function nameOfPlace(knowledge: Knowledge, id: string | undefined): string {
  if (id === undefined) return "";
  return knowledge.places.places.find((place) => place.id === id)?.name ?? id;
}

/** "front left lower ball joint: worn, with play" from a suspect's id. */
export function nameOfSuspect(knowledge: Knowledge, id: string): string {
  const [faultId = "", place = ""] = id.split("@");
  const fault = knowledge.faults.find((f) => f.id === faultId);
  return fault === undefined ? id : suspectName(knowledge, { fault: fault.id, part: fault.part, place });
}

/** Name of a check or a question by its proposal id. */
export function nameOfCheck(knowledge: Knowledge, id: string): string {
  if (id.startsWith("ask:")) return nameOfFinding(knowledge, id.slice(4));
  const [checkId = "", place] = id.split("@");
  const check = knowledge.checks.find((c) => c.id === checkId);
  if (check === undefined) return id;
  return place === undefined || check.places.length === 1
    ? check.name
    : `${check.name}, ${nameOfPlace(knowledge, place)}`;
}

/** Trade name of a part. */
export function nameOfPart(knowledge: Knowledge, id: string): string {
  return knowledge.parts.find((part) => part.id === id)?.name ?? id;
}

/** "front left lower ball joint" from a repair's id. */
export function nameOfRepair(knowledge: Knowledge, id: string): string {
  return repairName(knowledge, id);
}

export function nameOfSetUp(knowledge: Knowledge, id: string): string {
  return knowledge.setUps.setUps.find((s) => s.id === id)?.name ?? id;
}

/** A grade's id as words. */
export function levelWords(level: string): string {
  return level.replaceAll("-", " ");
}

// Screens take their words from here.
export { capital };
