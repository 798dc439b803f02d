import type { Car } from "../car/car.ts";
import { readings } from "../car/readings.ts";
import { evaluateLogic, logicPaths } from "../knowledge/logic.ts";
import type { Knowledge } from "../knowledge/schema/compiled.ts";
import type { PlaceIndex } from "./place-index.ts";

/** Can a rule hold at a place of this car, whatever its unknown attributes turn out to be? No rule always holds. */
export function possibleHere(
  knowledge: Knowledge,
  car: Car,
  places: PlaceIndex,
  when: unknown,
  place: string,
): boolean {
  if (when === undefined) return true;
  const record = places.byId.get(place);
  const fixed = { place: { id: place, axle: record?.axle ?? "none", side: record?.side ?? "none" } };
  return readings(knowledge, car, new Set(logicPaths(when)), fixed).some(({ data }) =>
    evaluateLogic(when, data),
  );
}
