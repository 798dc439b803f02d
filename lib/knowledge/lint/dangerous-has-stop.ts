import type { LintRule } from "./rule.ts";

/** Every dangerous fault says when to stop. */
export const dangerousHasStop: LintRule = {
  name: "dangerous-has-stop",
  about: "Every dangerous fault has a stop notice.",
  check: ({ knowledge }) =>
    knowledge.faults
      .filter((fault) => fault.severity.word === "dangerous" && fault.stop === undefined)
      .map((fault) => ({
        record: `faults/${fault.id}.json`,
        message: "it is dangerous and has no stop notice",
        mend: 'Add "stop" with the chance it shows from and what to do, or mend the severity.',
      })),
};
