import type { Advice } from "../../knowledge/schema/advice.ts";
import type { Costs } from "../../knowledge/schema/costs.ts";
import type { Grounded } from "../ground.ts";
import { asMinutes, remedyCost, repairOf } from "../repair-cost.ts";
import { finerComponents } from "../finer-components.ts";
import type { Weighing } from "../weigh.ts";

/** A part, and whether to have it ready before the car comes. */
export interface PartReady {
  readonly part: string;
  readonly place: string;
  /** Chance that it is needed, as the part at fault or as one that is renewed with it. */
  readonly chance: number;
  /** Chance from which ordering now costs less than waiting. */
  readonly breakEven: number;
  readonly order: boolean;
  /** Faults it is at fault for; empty when it only goes with another. */
  readonly because: readonly string[];
  /** `part@place` of repairs that it is renewed with. */
  readonly pairedWith: readonly string[];
}

/** Parts below this chance are not listed. */
const SMALLEST = 0.02;

/**
 * The parts that the repair may need, likeliest first, with those that are renewed along with them.
 *
 * Ordering now costs the return when the part is not needed, waiting costs the delay when it is: order when
 * p * wait > (1 - p) * return, so from p = return / (return + wait) on (the critical ratio of the newsvendor problem; Arrow,
 * Harris and Marschak 1951, from memory). Faults that take no part (loose, out of setting) are left out.
 */
export function partsReady(
  grounded: Grounded,
  weighing: Weighing,
  costs: Costs,
  advice: Advice,
): PartReady[] {
  const { explanation } = weighing;
  if (explanation === undefined) return [];
  const found = new Map<string, Gathered>();
  for (const { set, probability } of finerComponents(explanation)) {
    // Once a way, however many of its faults want the part: the ways exclude each other, so their chances add up.
    const here = new Set<Gathered>();
    for (const index of set) {
      for (const need of needsOf(grounded, costs, index)) {
        const own = found.get(need.id) ?? { chance: 0, price: 0, because: new Set(), pairedWith: new Set() };
        found.set(need.id, own);
        here.add(own);
        own.price = Math.max(own.price, need.price);
        if (need.for === undefined) own.because.add(grounded.suspects[index]?.id ?? "");
        else own.pairedWith.add(need.for);
      }
    }
    for (const own of here) own.chance += probability;
  }
  return [...found]
    .map(([id, { chance, price, because, pairedWith }]) => {
      const [part = "", place = ""] = id.split("@");
      const { returnShare, returnMinutes, waitMinutes } = advice.ready;
      const lost = returnMinutes + asMinutes(costs, returnShare * price);
      const breakEven = lost / (lost + waitMinutes);
      return {
        part,
        place,
        chance,
        breakEven,
        order: chance >= breakEven,
        because: [...because],
        pairedWith: [...pairedWith],
      };
    })
    .filter((p) => p.chance >= SMALLEST)
    .sort((a, b) => b.chance - a.chance || (a.part + a.place < b.part + b.place ? -1 : 1));
}

interface Gathered {
  chance: number;
  price: number;
  readonly because: Set<string>;
  readonly pairedWith: Set<string>;
}

interface Need {
  readonly id: string;
  readonly price: number;
  /** The repair that it goes with; undefined when it is the part at fault. */
  readonly for: string | undefined;
}

/** Parts of one suspect's remedy; none of its own when what is wrong takes no part. */
function needsOf(grounded: Grounded, costs: Costs, index: number): Need[] {
  const suspect = grounded.suspects[index];
  const remedy = grounded.faults.get(suspect?.fault ?? "")?.remedy;
  if (suspect === undefined || remedy === undefined) return [];
  const own = repairOf(grounded, index);
  const { price } = remedyCost(grounded, costs, index);
  const { places } = grounded.knowledge.places;
  const here = places.find((p) => p.id === suspect.place);
  const opposite = places.find((p) => p.axle === here?.axle && p.side !== here?.side && p.side !== "none");
  const paired = remedy.paired.flatMap(({ part, where }) => {
    const both = where === "other-side" ? [opposite?.id] : [suspect.place, opposite?.id];
    const at = where === "same-place" ? [suspect.place] : both;
    return grounded.suspects
      .filter(
        (s, i, all) =>
          s.part === part &&
          at.includes(s.place) &&
          all.findIndex((o) => o.part === part && o.place === s.place) === i,
      )
      .map(
        (s): Need => ({
          id: repairOf(grounded, s.index),
          price: remedyCost(grounded, costs, s.index).price,
          for: own,
        }),
      );
  });
  return [...(price > 0 ? [{ id: own, price, for: undefined }] : []), ...paired.filter((n) => n.id !== own)];
}
