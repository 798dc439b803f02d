import type { LintRule } from "./rule.ts";

/** Something proves every fault. */
export const faultHasDecisive: LintRule = {
  name: "fault-has-decisive",
  about: "Every fault has at least one decisive finding.",
  check: ({ knowledge }) =>
    knowledge.faults
      .filter((fault) => fault.decisive.length === 0)
      .map((fault) => ({
        record: `faults/${fault.id}.json`,
        message: "nothing proves it",
        mend: 'Name in "decisive" the observation after which the part may be ordered.',
      })),
};
