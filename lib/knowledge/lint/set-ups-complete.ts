import type { LintFinding, LintRule } from "./rule.ts";

/** Going from any set-up to any other has its minutes. */
export const setUpsComplete: LintRule = {
  name: "set-ups-complete",
  about: "set-ups.json has the minutes from every set-up to every other, and none from one to itself.",
  check: ({ knowledge }) => {
    const { setUps, minutes } = knowledge.setUps;
    const found: LintFinding[] = [];
    for (const from of setUps) {
      for (const to of setUps) {
        const value = Object.hasOwn(minutes, from.id) ? minutes[from.id]?.[to.id] : undefined;
        if (value !== undefined && (from.id !== to.id || value === 0)) continue;
        found.push({
          record: "set-ups.json",
          message: `minutes.${from.id}.${to.id} is ${value ?? "missing"}`,
          mend: from.id === to.id ? "Give 0." : "Give the minutes it takes.",
        });
      }
    }
    return found;
  },
};
