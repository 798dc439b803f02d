import { APART_RATIO, greatestFactor, listedInseparable, sharedComplaints } from "../lint/telling-apart.ts";
import { anyCar, compiledWorld } from "../lint/world.ts";
import type { Knowledge } from "../schema/compiled.ts";

/** Two faults that no single result of a check tells apart. */
export interface InseparablePair {
  /** Fault ids, the first before the second. */
  readonly faults: readonly [string, string];
  /** Where they stand when they are least told apart. */
  readonly places: readonly [string, string];
  /** The most that any one result of a check is likelier from the one than from the other; 1 when they are the same. */
  readonly factor: number;
  /** Complaints that both show; a pair that shares none is told apart by what the customer says. */
  readonly complaints: readonly string[];
  /** Why, when the knowledge lists the pair itself. */
  readonly why: string | undefined;
}

/**
 * Every two faults that can be on one car and give every result of every check that can be made there with the same chance,
 * within a factor of `tolerance`; the least told apart first.
 *
 * Several results together may still tell them apart a little; one never does.
 * Range  tolerance above 1; by default the factor from which the lint counts two faults as told apart.
 */
export function inseparablePairs(knowledge: Knowledge, tolerance: number = APART_RATIO): InseparablePair[] {
  const world = compiledWorld(knowledge);
  const { faults } = knowledge;
  const pairs: InseparablePair[] = [];
  faults.forEach((a, i) => {
    for (const b of faults.slice(i + 1)) {
      let least: { factor: number; places: [string, string] } | undefined;
      for (const at of world.placesOf(a)) {
        for (const place of world.placesOf(b)) {
          const cars = world.pairCars(a, at, b, place);
          if (!anyCar(cars)) continue;
          const factor = greatestFactor(world, a, at, b, place, cars, least?.factor ?? tolerance);
          if (factor < (least?.factor ?? tolerance)) least = { factor, places: [at, place] };
        }
      }
      if (least === undefined) continue;
      const why = [...a.inseparable, ...b.inseparable].find(
        ({ fault }) => fault === a.id || fault === b.id,
      )?.why;
      pairs.push({
        faults: [a.id, b.id],
        places: least.places,
        factor: least.factor,
        complaints: sharedComplaints(a, b),
        why: listedInseparable(a, b) ? why : undefined,
      });
    }
  });
  return pairs.sort((x, y) => x.factor - y.factor || (x.faults.join() < y.faults.join() ? -1 : 1));
}
