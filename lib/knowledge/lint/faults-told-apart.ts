import type { LintFinding, LintRule } from "./rule.ts";
import { APART_RATIO, listedInseparable, sharedComplaints, untoldPlaces } from "./telling-apart.ts";

/** Every two faults behind one complaint are told apart by some check. */
export const faultsToldApart: LintRule = {
  name: "faults-told-apart",
  about: `Two faults that share a complaint and can sit on one car have a checked observation whose chance differs by a factor of ${APART_RATIO}, or are listed as inseparable.`,
  check: (world) => {
    const { faults } = world.knowledge;
    const found: LintFinding[] = [];
    faults.forEach((a, i) => {
      for (const b of faults.slice(i)) {
        const [shared] = sharedComplaints(a, b);
        if (shared === undefined || listedInseparable(a, b)) continue;
        const places = untoldPlaces(world, a, b);
        if (places === undefined) continue;
        found.push({
          record: `faults/${a.id}.json`,
          message: `no check tells it (at ${places[0]}) from ${b.id} (at ${places[1]}); both show ${shared}`,
          mend: 'Link one of them to an observation that the other does not give, or list the pair in "inseparable" with why.',
        });
      }
    });
    return found;
  },
};
