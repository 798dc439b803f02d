import type { Grounded, Suspect } from "../../lib/engine/index.ts";

/** `part@place` of everything that the remedy of a fault renews with it: the other side of the axle, what comes with it. */
export function repairsWith(grounded: Grounded, { fault, place }: Suspect): string[] {
  const { places } = grounded;
  const paired = grounded.faults.get(fault)?.remedy.paired ?? [];
  const renewed = paired.flatMap(({ part, where }) =>
    grounded.suspects
      .filter((other) => {
        if (other.part !== part) return false;
        const here = places.overlap(place, other.place);
        const across = !here && places.byId.get(place)?.axle === places.byId.get(other.place)?.axle;
        return where === "same-place" ? here : where === "other-side" ? across : here || across;
      })
      .map((other) => `${part}@${other.place}`),
  );
  return [...new Set(renewed)];
}
