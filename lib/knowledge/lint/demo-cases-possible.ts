import { evaluateLogic } from "../logic.ts";
import type { LintFinding, LintRule } from "./rule.ts";

/** A demonstration case can happen. */
export const demoCasesPossible: LintRule = {
  name: "demo-cases-possible",
  about: "The fault that a demonstration case ends at can be at that place on that car.",
  check: (world) => {
    const { demoCases, faults, places } = world.knowledge;
    const found: LintFinding[] = [];
    for (const demo of demoCases) {
      const fault = faults.find((candidate) => candidate.id === demo.truth.fault);
      const place = places.places.find((candidate) => candidate.id === demo.truth.place);
      const part = fault === undefined ? undefined : world.parts.get(fault.part);
      const data = { ...demo.car, place };
      const possible =
        part !== undefined &&
        part.places.includes(demo.truth.place) &&
        [part.when, fault?.when].every((rule) => rule === undefined || evaluateLogic(rule, data));
      if (possible) continue;
      found.push({
        record: `demo-cases/${demo.id}.json`,
        message: `${demo.truth.fault} cannot be at ${demo.truth.place} on its car`,
        mend: "Mend the car, the fault or the place.",
      });
    }
    return found;
  },
};
