import type { LintFinding, LintRule } from "./rule.ts";

/** Numbers of Annex I, then a letter, then a roman numeral: "5.3.4 a", "2.1.3 b i". */
const ITEM = /^\d+(\.\d+){1,3}( [a-z])?( [ivx]+)?$/;

/** Severity names its item in one form, and only with a regulation behind it. */
export const severityItem: LintRule = {
  name: "severity-item",
  about: 'A severity\'s item reads like "5.3.4 a", and its basis is then a regulation.',
  check: ({ knowledge }) => {
    const kinds = new Map(knowledge.sources.map((source) => [source.id, source.kind]));
    const found: LintFinding[] = [];
    for (const { id, severity } of knowledge.faults) {
      const say = (message: string, mend: string) => {
        found.push({ record: `faults/${id}.json`, message: `severity: ${message}`, mend });
      };
      if (severity.item !== undefined && !ITEM.test(severity.item)) {
        say(`the item "${severity.item}" is not in its form`, 'Write it like "5.3.4 a".');
      }
      if (severity.item !== undefined && kinds.get(severity.basis) !== "regulation") {
        say(
          `an item needs a regulation as its basis, not "${severity.basis}"`,
          "Name the regulation, or remove the item.",
        );
      }
    }
    return found;
  },
};
