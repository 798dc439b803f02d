import { CornerwiseError, type ErrorCode } from "../errors.ts";

/** One thing that is wrong with a knowledge file: where, what, and how to mend it. */
export interface KnowledgeProblem {
  /** Path relative to the knowledge folder, such as "faults/damper-leaking.json". */
  readonly file: string;
  /** Path inside the file, such as "shows.0.complaint"; empty for the whole file. */
  readonly path: string;
  readonly what: string;
  readonly mend: string;
}

/** How many problems are spelt out in an error's message; `details.problems` always holds them all. */
const MESSAGE_LIMIT = 200;

/** Put a problem on one line: file, path, what, how to mend. */
export function problemLine(problem: KnowledgeProblem): string {
  const where = problem.path === "" ? problem.file : `${problem.file}: ${problem.path}`;
  return `${where}: ${problem.what}. ${problem.mend}`;
}

/**
 * Throw one error that lists every problem, or return when there is none.
 *
 * Errors  the given code; details.problems holds the list.
 */
export function throwProblems(code: ErrorCode, problems: readonly KnowledgeProblem[]): void {
  if (problems.length === 0) return;
  const lines = problems.slice(0, MESSAGE_LIMIT).map(problemLine);
  const left = problems.length - lines.length;
  if (left > 0) lines.push(`and ${left} more`);
  const count = problems.length === 1 ? "1 problem" : `${problems.length} problems`;
  throw new CornerwiseError(code, `the knowledge has ${count}:\n${lines.join("\n")}`, { problems });
}
