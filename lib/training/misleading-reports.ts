import { featureChance } from "../engine/feature-chance.ts";
import { findingName, parseFinding } from "../engine/finding-id.ts";
import type { ReadyExercise } from "./exercise-car.ts";

/** A report misleads when the true cause gives it this much more seldom than any car does. */
const AGAINST = 0.5;

/** Names of what is said of the complaint that speaks against every true cause. */
export function misleadingReports({ grounded, car, exercise }: ReadyExercise): string[] {
  const { knowledge, places } = grounded;
  return exercise.said.flatMap(({ finding, state }) => {
    const parsed = parseFinding(knowledge, finding);
    if (parsed.kind !== "feature" || !parsed.feature.complaints.includes(car.complaint.id)) return [];
    const { feature } = parsed;
    const asAnswered = (chance: number): number => (state === "present" ? chance : 1 - chance);
    const against = car.fired.every(({ suspect, showing }) => {
      const place = places.byId.get(grounded.suspects[suspect]?.place ?? "");
      if (place === undefined) return false;
      return asAnswered(featureChance(feature, showing, place)) < AGAINST * asAnswered(feature.background);
    });
    return car.fired.length > 0 && against ? [findingName(knowledge, finding)] : [];
  });
}
