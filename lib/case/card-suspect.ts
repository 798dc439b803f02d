import { suspectName } from "../engine/names.ts";
import { indexPlaces } from "../engine/place-index.ts";
import type { CompiledFault, CompiledPart, Knowledge, PlaceRecord } from "../knowledge/schema/compiled.ts";
import { findingIfKnown, gradeOf } from "./card-findings.ts";
import type { CaseAnswer } from "./case-state.ts";

/** A suspect of the verdict with its records. */
export interface KnownSuspect {
  readonly id: string;
  readonly name: string;
  readonly fault: CompiledFault;
  readonly part: CompiledPart;
  readonly place: PlaceRecord;
}

/** The records behind a suspect id (`fault@place`); undefined when this release does not hold them. */
export function suspectIfKnown(knowledge: Knowledge, id: string): KnownSuspect | undefined {
  const [faultId, placeId] = id.split("@");
  const fault = knowledge.faults.find((one) => one.id === faultId);
  const part = knowledge.parts.find((one) => one.id === fault?.part);
  const place = knowledge.places.places.find((one) => one.id === placeId);
  if (fault === undefined || part === undefined || place === undefined) return undefined;
  const name = suspectName(knowledge, { fault: fault.id, part: part.id, place: place.id });
  return { id, name, fault, part, place };
}

/** Whether a finding that is present follows from the suspect more than from causes outside the knowledge. */
export function explains(knowledge: Knowledge, suspect: KnownSuspect, answer: CaseAnswer): boolean {
  const finding = findingIfKnown(knowledge, answer.finding);
  if (finding?.kind === "complaint") {
    const { id, leak } = finding.complaint;
    return suspect.fault.shows.some((shows) => shows.complaint === id && shows.strength.p > leak);
  }
  if (finding?.kind !== "observation" || !atSuspect(knowledge, suspect, finding.place)) return false;
  const { id, leak } = finding.observation;
  const grade = Math.max(0, gradeOf(finding.observation, answer));
  const link = suspect.fault.links.find((one) => one.observation === id);
  return link !== undefined && (link.levels[grade]?.p ?? 0) > (leak[grade] ?? leak[0] ?? 1);
}

/** Whether the answer is a decisive finding of the suspect, found by hand, at its place and in the grade that proves. */
export function proves(knowledge: Knowledge, suspect: KnownSuspect, answer: CaseAnswer): boolean {
  if (answer.by !== "check") return false;
  const finding = findingIfKnown(knowledge, answer.finding);
  if (finding?.kind !== "observation" || !atSuspect(knowledge, suspect, finding.place)) return false;
  const grade = gradeOf(finding.observation, answer);
  return suspect.fault.decisive.some(
    (one) => one.observation === finding.observation.id && grade >= one.level,
  );
}

/** A finding without a place proves nothing about one place, unless the part is only there. */
function atSuspect(knowledge: Knowledge, suspect: KnownSuspect, place: string | undefined): boolean {
  if (place === undefined) return suspect.part.places.length === 1;
  return indexPlaces(knowledge).overlap(place, suspect.place.id);
}
