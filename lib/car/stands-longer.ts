import type { Knowledge } from "../knowledge/schema/compiled.ts";
import { alongLine } from "../maths/along-line.ts";
import type { Usage } from "./usage.ts";

/**
 * Factor on how long faults stand unmended on a car of this age: the older the car, the longer.
 *
 * Source: `car.json`, `stands.byAge`; 1 where the knowledge has none.
 */
export function standsLonger(knowledge: Knowledge, { years }: Usage): number {
  const points = knowledge.car.stands.byAge?.points.map((p) => ({ at: p.years, value: p.factor })) ?? [];
  return alongLine(points, years) ?? 1;
}
