import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { runStep } from "./steps.mjs";
import { vitestCounts } from "./test-reports.mjs";

/** The unit, property and reference tests; how they went is read from their report, not from what they print. */
export function runUnitTests(root) {
  return runStep("unit tests", () => {
    const reportFile = join(root, "reports", "vitest.json");
    const vitest = join(root, "node_modules", "vitest", "vitest.mjs");
    const run = spawnSync(
      process.execPath,
      [vitest, "run", "--reporter=default", "--reporter=json", `--outputFile.json=${reportFile}`],
      { cwd: root, stdio: "inherit" },
    );
    const counts = vitestCounts(reportFile);
    return { ...counts, ok: counts.ok && run.status === 0 };
  });
}
