import type { Knowledge, PlaceRecord } from "../knowledge/schema/compiled.ts";

/** Places of a car and which of them overlap. */
export interface PlaceIndex {
  readonly byId: ReadonlyMap<string, PlaceRecord>;
  /** True when one place is the other, or a part of it. */
  overlap(a: string, b: string): boolean;
}

/** Index over the places of the knowledge. */
export function indexPlaces(knowledge: Knowledge): PlaceIndex {
  const byId = new Map(knowledge.places.places.map((p) => [p.id, p]));
  const pairs = new Set<string>();
  for (const place of byId.values()) {
    pairs.add(`${place.id} ${place.id}`);
    for (const wider of place.within) {
      pairs.add(`${place.id} ${wider}`);
      pairs.add(`${wider} ${place.id}`);
    }
  }
  return { byId, overlap: (a, b) => pairs.has(`${a} ${b}`) };
}
