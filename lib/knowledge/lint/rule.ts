import type { LintWorld } from "./world.ts";

/** One thing that makes no sense: which rule says so, of which record, what, and how to mend it. */
export interface LintProblem {
  readonly rule: string;
  /** File of the record, relative to the knowledge folder. */
  readonly record: string;
  readonly message: string;
  readonly mend: string;
}

/** What a rule finds; the runner adds the rule's name. */
export type LintFinding = Omit<LintProblem, "rule">;

/** Whether the records mean something together: one rule a file. */
export interface LintRule {
  readonly name: string;
  /** What is true of knowledge that the rule is content with. */
  readonly about: string;
  readonly check: (world: LintWorld) => LintFinding[];
}
