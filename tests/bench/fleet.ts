import type { CarInput } from "../../lib/car/car.ts";
import type { Knowledge } from "../../lib/knowledge/schema/compiled.ts";
import { seededUniform } from "../../lib/maths/seeded-uniform.ts";

/** A car of the road: attributes by their shares, 3 to 15 years old, the km of a car of that age give or take. */
export function anyCarOnTheRoad(knowledge: Knowledge, seed: number): CarInput {
  const uniform = seededUniform(seed);
  const age = 3 + Math.floor(13 * uniform());
  const km = Math.round(age * knowledge.car.kmPerYear.value * (0.5 + uniform()));
  const car: Record<string, unknown> = {};
  for (const attribute of knowledge.car.attributes) {
    if (attribute.kind !== "choice") continue;
    let left = uniform() * attribute.values.reduce((sum, v) => sum + v.share, 0);
    const value = attribute.values.find((v) => {
      left -= v.share;
      return left < 0;
    });
    car[attribute.path] = value?.id;
  }
  return { ...car, odometerKm: km, ageYears: age };
}
