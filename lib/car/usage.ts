import type { Knowledge } from "../knowledge/schema/compiled.ts";
import type { Car } from "./car.ts";

/** How far and how long a car has run, every gap filled. */
export interface Usage {
  readonly km: number;
  readonly years: number;
}

/**
 * Distance and age of a car; one is worked out from the other, or the typical car stands in.
 *
 * Units: km, years.
 * Source: `car.json`, kmPerYear and typical values, each with its basis.
 */
export function usage(knowledge: Knowledge, car: Car): Usage {
  const { attributes, kmPerYear } = knowledge.car;
  const known = (path: string): number | undefined => {
    const value = car.get(path);
    return typeof value === "number" ? value : undefined;
  };
  const typical = (path: string): number =>
    attributes.flatMap((a) => (a.kind === "number" && a.path === path ? [a.typical] : []))[0] ?? 0;
  const km = known("odometerKm");
  const years = known("ageYears");
  return {
    km: km ?? (years === undefined ? typical("odometerKm") : years * kmPerYear.value),
    years: years ?? (km === undefined ? typical("ageYears") : km / kmPerYear.value),
  };
}
