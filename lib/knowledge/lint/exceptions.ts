import { z } from "zod";
import { CornerwiseError } from "../../errors.ts";
import { Line } from "../schema/common.ts";
import type { LintProblem } from "./rule.ts";

const LintException = z.strictObject({ rule: Line, record: Line, why: z.string().min(10).max(600) });

/** A problem that is right all the same: every problem of the rule in the record, and why. */
export type LintException = z.infer<typeof LintException>;

/**
 * Read `lint-exceptions.json`: a list of {rule, record, why}.
 *
 * Errors  "not-readable" when it is not JSON, "bad-record" when its form is wrong.
 */
export function readExceptions(text: string): LintException[] {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch (cause) {
    throw new CornerwiseError("not-readable", "lint-exceptions.json is not JSON. Mend it.", {}, { cause });
  }
  const result = z.array(LintException).safeParse(json);
  if (result.success) return result.data;
  const issues = result.error.issues.map((issue) => `${issue.path.join(".")}: ${issue.message}`);
  throw new CornerwiseError(
    "bad-record",
    `lint-exceptions.json: ${issues.join("; ")}. Give a list of {rule, record, why}.`,
  );
}

/** Problems less those excepted, plus one for every exception that excepts nothing. */
export function applyExceptions(
  problems: readonly LintProblem[],
  exceptions: readonly LintException[],
): LintProblem[] {
  const covers = (exception: LintException, problem: LintProblem) =>
    exception.rule === problem.rule && exception.record === problem.record;
  const left = problems.filter((problem) => !exceptions.some((exception) => covers(exception, problem)));
  const idle = exceptions.filter((exception) => !problems.some((problem) => covers(exception, problem)));
  return [
    ...left,
    ...idle.map((exception) => ({
      rule: "exception-needed",
      record: "lint-exceptions.json",
      message: `the exception from ${exception.rule} for ${exception.record} excepts nothing any more`,
      mend: "Remove it.",
    })),
  ];
}
