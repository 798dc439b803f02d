import type { LintRule } from "./rule.ts";
import { canBeAt } from "./world.ts";

/** A demonstration case can happen. */
export const demoCasesPossible: LintRule = {
  name: "demo-cases-possible",
  about: "The fault that a demonstration case ends at can be at that place on that car.",
  check: (world) =>
    world.knowledge.demoCases
      .filter(({ truth, car }) => !canBeAt(world, truth.fault, truth.place, car))
      .map(({ id, truth }) => ({
        record: `demo-cases/${id}.json`,
        message: `${truth.fault} cannot be at ${truth.place} on its car`,
        mend: "Mend the car, the fault or the place.",
      })),
};
