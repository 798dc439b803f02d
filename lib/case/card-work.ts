import type { Knowledge, PlaceRecord } from "../knowledge/schema/compiled.ts";
import type { KnownSuspect } from "./card-suspect.ts";
import type { CardPaired, CardSeverity, CardWork } from "./job-card-types.ts";

type Where = KnownSuspect["fault"]["remedy"]["paired"][number]["where"];

/** The place across the car; the place itself when it has no side. */
function otherSide(knowledge: Knowledge, place: PlaceRecord): PlaceRecord {
  const across = knowledge.places.places.find(
    (one) =>
      one.axle === place.axle && one.side !== "none" && place.side !== "none" && one.side !== place.side,
  );
  return across ?? place;
}

function whereWords(knowledge: Knowledge, place: PlaceRecord, where: Where): string {
  const across = otherSide(knowledge, place);
  if (where === "same-place" || across === place) return place.name;
  return where === "other-side" ? across.name : `${place.name} and ${across.name}`;
}

/** The words of the cautions, once each. */
export function cautionTexts(knowledge: Knowledge, ids: readonly string[]): string[] {
  return [...new Set(ids)].flatMap((id) => knowledge.cautions.find((one) => one.id === id)?.text ?? []);
}

/** The work on one suspect, with what its remedy record asks for written out as steps. */
export function cardWork(knowledge: Knowledge, suspect: KnownSuspect): CardWork {
  const { remedy } = suspect.fault;
  const paired = remedy.paired.map((one): CardPaired => {
    const part = knowledge.parts.find((candidate) => candidate.id === one.part);
    return {
      part: part?.name ?? one.part,
      where: whereWords(knowledge, suspect.place, one.where),
      why: one.why,
    };
  });
  const steps = [remedy.work];
  if (remedy.oneUse.length > 0) steps.push(`Fit new, never used again: ${remedy.oneUse.join("; ")}.`);
  if (remedy.tightenAtRideHeight) {
    steps.push("Tighten the bolts of rubber bushes only with the car at ride height, to the maker's torque.");
  }
  if (remedy.alignment) steps.push("Measure and set the wheel alignment afterwards.");
  return {
    suspect: suspect.id,
    name: suspect.name,
    steps,
    minutes: remedy.minutes,
    paired,
    oneUse: remedy.oneUse,
    tightenAtRideHeight: remedy.tightenAtRideHeight,
    alignmentAfter: remedy.alignment,
    lookAtToo: remedy.lookAtToo,
    cautions: cautionTexts(knowledge, remedy.cautions),
  };
}

/** How grave the suspect is, with the item and the reason. */
export function cardSeverity(knowledge: Knowledge, suspect: KnownSuspect): CardSeverity {
  const { word, item, reason, basis } = suspect.fault.severity;
  return {
    suspect: suspect.id,
    name: suspect.name,
    word,
    ...(item !== undefined && { item }),
    reason,
    basis: knowledge.sources.find((one) => one.id === basis)?.title ?? basis,
  };
}
