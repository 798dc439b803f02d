import type { LintFinding, LintRule } from "./rule.ts";
import { sharedComplaints, untoldPlaces } from "./telling-apart.ts";

/** A pair is listed as inseparable only while it is. */
export const inseparableNeeded: LintRule = {
  name: "inseparable-needed",
  about: "Faults listed as inseparable share a complaint and no check tells them apart.",
  check: (world) => {
    const faults = new Map(world.knowledge.faults.map((fault) => [fault.id, fault]));
    const found: LintFinding[] = [];
    for (const fault of world.knowledge.faults) {
      for (const entry of fault.inseparable) {
        const other = faults.get(entry.fault);
        if (other === undefined) continue;
        const shared = sharedComplaints(fault, other).length > 0;
        if (shared && untoldPlaces(world, fault, other) !== undefined) continue;
        found.push({
          record: `faults/${fault.id}.json`,
          message: shared
            ? `${other.id} is listed as inseparable, but a check tells them apart`
            : `${other.id} is listed as inseparable, but they share no complaint`,
          mend: 'Remove it from "inseparable".',
        });
      }
    }
    return found;
  },
};
