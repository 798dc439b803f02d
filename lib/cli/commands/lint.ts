import { existsSync } from "node:fs";
import { join } from "node:path";
import { CornerwiseError } from "../../errors.ts";
import { LINT_RULES, lintKnowledge } from "../../knowledge/lint/index.ts";
import { type LintException, readExceptions } from "../../knowledge/lint/exceptions.ts";
import type { LintProblem } from "../../knowledge/lint/rule.ts";
import { type Command, EXIT } from "../command.ts";
import { readText } from "../files.ts";
import { knowledgeFolder, loadFolder } from "../load-knowledge.ts";
import { readArgs } from "../read-args.ts";

/** Names that a problem's rule can have: the lint's, and the codes of what cannot be read or compiled. */
const KNOWN_RULES: ReadonlySet<string> = new Set([
  ...LINT_RULES.map((rule) => rule.name),
  "exception-needed",
  "bad-record",
  "unknown-id",
  "bad-logic",
]);

const EXCEPTIONS = "lint-exceptions.json";

/** `cornerwise lint`: whether the knowledge's records make sense together. */
export const lintCommand: Command = {
  name: "lint",
  summary: "check that the knowledge's records make sense together",
  help: `Use: cornerwise lint [FOLDER] [--rule NAME] [--summary] [--json]
       cornerwise lint --rules

Read, compile and lint the knowledge in FOLDER (knowledge/ when left out). Every
problem is one line: rule, record, what is wrong, how to mend it. What is right all
the same is listed in FOLDER/${EXCEPTIONS} as {rule, record, why}; an exception
that is no longer needed is a problem too.

  --rule NAME   only problems of this rule
  --rules       list the rules and what each demands
  --summary     only how many problems each rule has
  --json        print a JSON list of {rule, record, message, mend}

Examples:
  cornerwise lint
  cornerwise lint --rule faults-told-apart

Exit codes: 0 no problem, 1 problems found, 2 called wrongly, 3 could not be done.
`,
  async run(args, io) {
    const { values, positionals } = readArgs(
      args,
      {
        json: { type: "boolean" },
        summary: { type: "boolean" },
        rules: { type: "boolean" },
        rule: { type: "string" },
      },
      1,
    );
    if (values.rules === true) {
      io.stdout(LINT_RULES.map(({ name, about }) => `${name}: ${about}\n`).join(""));
      return EXIT.ok;
    }
    if (values.rule !== undefined && !KNOWN_RULES.has(values.rule)) {
      throw new CornerwiseError(
        "bad-request",
        `there is no rule "${values.rule}". See: cornerwise lint --rules.`,
      );
    }
    const folder = knowledgeFolder(positionals[0], io.cwd);
    const all = problemsOf(folder);
    const problems = all.filter((problem) => values.rule === undefined || problem.rule === values.rule);
    if (values.json === true) io.stdout(`${JSON.stringify(problems, null, 2)}\n`);
    else io.stdout(values.summary === true ? summary(problems) : problems.map(problemLine).join(""));
    io.stderr(problems.length === 0 ? "no problem found\n" : `${problems.length} problem(s) found\n`);
    return problems.length === 0 ? EXIT.ok : EXIT.problems;
  },
};

function problemsOf(folder: string): readonly LintProblem[] {
  try {
    const { authored, knowledge } = loadFolder(folder);
    return lintKnowledge(knowledge, authored, exceptionsIn(folder));
  } catch (error) {
    const problems = error instanceof CornerwiseError ? error.details.problems : undefined;
    if (!(error instanceof CornerwiseError) || !Array.isArray(problems)) throw error;
    return problems.map((problem: { file: string; path: string; what: string; mend: string }) => ({
      rule: error.code,
      record: problem.file,
      message: problem.path === "" ? problem.what : `${problem.path}: ${problem.what}`,
      mend: problem.mend,
    }));
  }
}

function exceptionsIn(folder: string): LintException[] {
  const path = join(folder, EXCEPTIONS);
  return existsSync(path) ? readExceptions(readText(path)) : [];
}

function problemLine({ rule, record, message, mend }: LintProblem): string {
  return `${rule}: ${record}: ${message}. ${mend}\n`;
}

function summary(problems: readonly LintProblem[]): string {
  const counts = new Map<string, number>();
  for (const { rule } of problems) counts.set(rule, (counts.get(rule) ?? 0) + 1);
  return [...counts].map(([rule, count]) => `${String(count).padStart(6)}  ${rule}\n`).join("");
}
