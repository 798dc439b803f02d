import type { LintFinding, LintRule } from "./rule.ts";

/** A stronger grade is never likelier than a weaker one. */
export const gradesFall: LintRule = {
  name: "grades-fall",
  about: "Strengths and leaks do not rise from grade to grade; measured limits do.",
  check: ({ knowledge }) => {
    const found: LintFinding[] = [];
    for (const fault of knowledge.faults) {
      for (const { observation, levels } of fault.links) {
        const strengths = levels.map(({ p }) => p);
        if (!rises(strengths)) continue;
        found.push({
          record: `faults/${fault.id}.json`,
          message: `links.${observation}: strengths rise from grade to grade (${strengths.join(", ")})`,
          mend: "Each is the chance of at least that grade: give the weakest grade the greatest.",
        });
      }
    }
    for (const { id, leak, measure } of knowledge.observations) {
      if (rises(leak)) {
        found.push({
          record: `observations/${id}.json`,
          message: `leak: rises from grade to grade (${leak.join(", ")})`,
          mend: "Each is the chance of at least that grade: give the weakest grade the greatest.",
        });
      }
      const limits = measure?.atLeast ?? [];
      if (limits.some((limit, i) => i > 0 && limit <= (limits[i - 1] ?? limit))) {
        found.push({
          record: `observations/${id}.json`,
          message: `measure.atLeast: ${limits.join(", ")} do not rise`,
          mend: "Order the limits so that a stronger grade starts at a greater value.",
        });
      }
    }
    return found;
  },
};

function rises(values: readonly number[]): boolean {
  return values.some((value, i) => i > 0 && value > (values[i - 1] ?? value));
}
