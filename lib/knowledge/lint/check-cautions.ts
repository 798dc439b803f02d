import type { LintFinding, LintRule } from "./rule.ts";

/** Whatever a check does to the car is answered by a caution. */
export const checkCautions: LintRule = {
  name: "check-cautions",
  about:
    "Every check that lifts, loads, spins, drives, springs, heats or moves has a caution that covers it.",
  check: ({ knowledge }) => {
    const covers = new Map(
      knowledge.cautions.map((caution) => [caution.id, new Set<string>(caution.covers)]),
    );
    const found: LintFinding[] = [];
    for (const check of knowledge.checks) {
      const bare = check.does.filter((deed) => !check.cautions.some((id) => covers.get(id)?.has(deed)));
      if (bare.length === 0) continue;
      const [first = ""] = bare;
      const fitting = knowledge.cautions.filter((caution) => covers.get(caution.id)?.has(first));
      found.push({
        record: `checks/${check.id}.json`,
        message: `no caution covers: ${bare.join(", ")}`,
        mend: `Name a caution that covers it (${first}: ${fitting.map(({ id }) => id).join(", ") || "none yet, write one"}).`,
      });
    }
    return found;
  },
};
