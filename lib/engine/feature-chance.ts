import type { CompiledFeature, CompiledShowing, PlaceRecord } from "../knowledge/schema/compiled.ts";

/** Feature chances are held away from 0 and 1, so that one wrong word cannot rule a fault out. */
const SMALLEST = 0.01;
const LARGEST = 0.98;

/**
 * Chance that a showing of a fault at a place has the feature.
 *
 * A sided feature is looked up under its relative key for that side or axle: turning left loads the right-hand side.
 */
export function featureChance(
  feature: CompiledFeature,
  showing: CompiledShowing,
  place: PlaceRecord,
): number {
  const listed = (key: string): number | undefined =>
    Object.hasOwn(showing.features, key) ? showing.features[key] : undefined;
  const key = relativeKey(feature, place);
  const chance =
    (key === undefined ? undefined : listed(key)) ??
    listed(feature.id) ??
    (key === undefined ? undefined : feature.defaults?.[key]) ??
    feature.unlisted;
  return Math.min(Math.max(chance, SMALLEST), LARGEST);
}

function relativeKey(feature: CompiledFeature, place: PlaceRecord): string | undefined {
  const { relative } = feature;
  if (relative === undefined) return undefined;
  const sided = relative.left !== undefined || relative.right !== undefined;
  return relative[sided ? place.side : place.axle];
}

/** Weight of one of `count` answered features that go together: count to the power of minus the group's temper. */
export function temperedWeight(count: number, temper: number): number {
  return count ** -temper;
}
