import type { CompiledFeature, Knowledge, PlaceRecord } from "../schema/compiled.ts";

/** Where the fault sits for a sided feature to be meant. */
export type Facet = "left" | "right" | "front" | "rear" | "none";

/** A feature as a fault names it: plainly, or under the key that a sided feature has for its place. */
export interface KeyedFeature {
  readonly feature: CompiledFeature;
  /** Left out for a feature that means the same wherever the fault sits. */
  readonly facet?: Facet;
}

/**
 * The features that a key of a showing stands for, for a fault that can be at the places given.
 *
 * A sided feature is looked up under one key a side or axle, so that one key may stand for several.
 */
export function featuresOfKey(
  knowledge: Knowledge,
  key: string,
  places: readonly PlaceRecord[],
): KeyedFeature[] {
  const own = knowledge.features.find(({ id }) => id === key);
  if (own !== undefined) return [{ feature: own }];
  return knowledge.features.flatMap((feature) =>
    facetsOf(feature, places)
      .filter((facet) => feature.relative?.[facet] === key)
      .map((facet) => ({ feature, facet })),
  );
}

/** Sides, or axles, of the places that a sided feature tells apart. */
export function facetsOf(feature: CompiledFeature, places: readonly PlaceRecord[]): Facet[] {
  const { relative } = feature;
  if (relative === undefined) return [];
  const sided = relative.left !== undefined || relative.right !== undefined;
  return [...new Set(places.map((place) => (sided ? place.side : place.axle)))];
}
