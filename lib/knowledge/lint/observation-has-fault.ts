import type { LintFinding, LintRule } from "./rule.ts";

/** Some fault gives every observation, at a place where it can be seen. */
export const observationHasFault: LintRule = {
  name: "observation-has-fault",
  about: "Every observation is linked from a fault whose part lies at an overlapping place.",
  check: (world) => {
    const found: LintFinding[] = [];
    for (const observation of world.knowledge.observations) {
      const silent = observation.places.filter(
        (place) =>
          !world.knowledge.faults.some(
            (fault) =>
              fault.links.some((link) => link.observation === observation.id) &&
              world.placesOf(fault).some((at) => world.overlap(at, place)),
          ),
      );
      if (silent.length === 0) continue;
      found.push({
        record: `observations/${observation.id}.json`,
        message: `no fault gives it at ${silent.join(", ")}`,
        mend: 'Link a fault to it, or narrow its "at", or remove it.',
      });
    }
    return found;
  },
};
