// How many tests passed and failed, from the JSON reports of Vitest and Playwright.
import { readFileSync } from "node:fs";

function read(path) {
  try {
    return JSON.parse(readFileSync(path, "utf8"));
  } catch (cause) {
    throw new Error(`There is no readable report ${path}: the tests did not run to their end.`, { cause });
  }
}

/** No test at all is a failure: a suite that finds nothing proves nothing. */
function counted(passed, failed, skippedTests, what) {
  if (passed + failed === 0) return { ok: false, passed, failed, note: `no ${what} test was run` };
  return {
    ok: failed === 0,
    passed,
    failed,
    ...(skippedTests > 0 && { note: `${passed} passed, ${failed} failed, ${skippedTests} left out` }),
  };
}

export function vitestCounts(path) {
  const report = read(path);
  // A file that cannot be loaded has no tests of its own, but is a failure.
  const broken = report.testResults.filter(
    (file) => file.status === "failed" && file.assertionResults.every((test) => test.status !== "failed"),
  ).length;
  const left = (report.numPendingTests ?? 0) + (report.numTodoTests ?? 0);
  return counted(report.numPassedTests, report.numFailedTests + broken, left, "unit");
}

export function playwrightCounts(path) {
  const { stats, errors = [] } = read(path);
  return counted(stats.expected, stats.unexpected + stats.flaky + errors.length, stats.skipped, "browser");
}
