import type { LintFinding, LintRule } from "./rule.ts";
import { anyCar } from "./world.ts";

/** There is a way to learn every finding: a check for an observation, a question for the rest. */
export const findingLearnable: LintRule = {
  name: "finding-learnable",
  about:
    "Every observation is settled by a check at each of its places; every complaint, feature and context has a question.",
  check: (world) => {
    const { knowledge } = world;
    const found: LintFinding[] = [];
    for (const observation of knowledge.observations) {
      const blind = observation.places.filter((place) => {
        return !anyCar(world.settledCars(observation, place));
      });
      if (blind.length === 0) continue;
      found.push({
        record: `observations/${observation.id}.json`,
        message: `no check settles it at ${blind.join(", ")}`,
        mend: 'Name it in the "settles" of a check there, or give it places where it can be checked.',
      });
    }
    const asked = [
      ...knowledge.complaints.map((record) => ({ record, folder: "complaints" })),
      ...knowledge.features.map((record) => ({ record, folder: "features" })),
      ...knowledge.contexts.map((record) => ({ record, folder: "contexts" })),
    ];
    for (const { record, folder } of asked) {
      if (record.question.trim().endsWith("?")) continue;
      found.push({
        record: `${folder}/${record.id}.json`,
        message: `"${record.question}" is no question`,
        mend: "Word it as a question that ends with a question mark.",
      });
    }
    return found;
  },
};
