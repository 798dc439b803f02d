import { placedChecks } from "../../lib/engine/check-places.ts";
import type { Grounded } from "../../lib/engine/index.ts";
import type { PlayedCase } from "../../lib/engine/policies/index.ts";
import { gradeFound, type SimulatedCar } from "../../lib/engine/simulate/index.ts";
import type { Suspect } from "../../lib/engine/suspect.ts";

/** Why a search did not end with the hidden fault, by what became of the findings that would decide for it. */
export function whyMissed(
  grounded: Grounded,
  car: SimulatedCar,
  { fault, place }: Suspect,
  { checks }: PlayedCase,
): string {
  const deciding = (grounded.faults.get(fault)?.decisive ?? []).flatMap(({ observation, level }) =>
    [...grounded.nodes.values()]
      .filter((n) => n.observation.id === observation && grounded.places.overlap(n.place ?? "", place))
      .map((node) => ({ id: node.id, level })),
  );
  const ways = placedChecks(grounded).flatMap((p) => {
    const settles = deciding.filter((d) => p.nodes.some((n) => n.id === d.id));
    return settles.length === 0 ? [] : [{ id: p.id, settles }];
  });
  if (ways.length === 0) return "no check on this car decides it";
  const made = ways.filter((w) => checks.includes(w.id));
  if (made.length === 0) return `not looked at (${ways.map((w) => w.id.split("@")[0]).join(", ")})`;
  const seen = made.some((w) => w.settles.some((d) => gradeFound(car, d.id) >= d.level));
  return seen ? "seen, but another is named" : "looked at, but not seen";
}
