import type { LintFinding, LintRule } from "./rule.ts";
import { anyCar, union } from "./world.ts";

/** A check finds a fault when its finding is at least this many times likelier with the fault than without. */
export const FINDS_RATIO = 3;

/** Every fault can be found by some check, at every place and on every car that can have it. */
export const faultFindable: LintRule = {
  name: "fault-findable",
  about: `For every fault, place and car there is a check of an observation that is ${FINDS_RATIO} times likelier with the fault than from its leak.`,
  check: (world) => {
    const { knowledge, cars, observations, overlap } = world;
    const found: LintFinding[] = [];
    for (const fault of knowledge.faults) {
      for (const at of world.placesOf(fault)) {
        const there = world.faultCars(fault, at);
        const findable = fault.links.flatMap((link) => {
          const observation = observations.get(link.observation);
          if (observation === undefined) return [];
          const tells = link.levels.some(({ p }, level) => p >= FINDS_RATIO * (observation.leak[level] ?? 1));
          if (!tells) return [];
          return observation.places
            .filter((place) => overlap(place, at))
            .map((place) => world.settledCars(observation, place));
        });
        const covered = union(findable, cars.length);
        const hidden = cars.find((_, i) => there[i] === 1 && covered[i] !== 1);
        if (hidden === undefined) continue;
        found.push({
          record: `faults/${fault.id}.json`,
          message: `no check finds it at ${at} on a car with ${hidden.name}`,
          mend: "Link it to an observation that a check settles at that place, or mend the `when` of part, observation or check.",
        });
        break;
      }
      if (!world.placesOf(fault).some((at) => anyCar(world.faultCars(fault, at)))) {
        found.push({
          record: `faults/${fault.id}.json`,
          message: "no car can have it at any place",
          mend: "Mend its `when`, or that of its part.",
        });
      }
    }
    return found;
  },
};
