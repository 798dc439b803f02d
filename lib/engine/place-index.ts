import type { Knowledge, PlaceRecord } from "../knowledge/schema/compiled.ts";

/** Places of a car and which of them overlap. */
export interface PlaceIndex {
  readonly byId: ReadonlyMap<string, PlaceRecord>;
  /** True when one place is the other, or a part of it. */
  overlap(a: string, b: string): boolean;
}

const KEPT = new WeakMap<Knowledge, PlaceIndex>();

/** Index over the places of the knowledge; made once for each. */
export function indexPlaces(knowledge: Knowledge): PlaceIndex {
  const kept = KEPT.get(knowledge) ?? madeIndex(knowledge);
  KEPT.set(knowledge, kept);
  return kept;
}

function madeIndex(knowledge: Knowledge): PlaceIndex {
  const byId = new Map(knowledge.places.places.map((p) => [p.id, p]));
  const meets = new Map([...byId.keys()].map((id) => [id, new Set([id])]));
  for (const place of byId.values()) {
    for (const wider of place.within) {
      meets.get(place.id)?.add(wider);
      meets.get(wider)?.add(place.id);
    }
  }
  return { byId, overlap: (a, b) => meets.get(a)?.has(b) === true };
}
