// Runs the steps of a check one after the other and says how each went.
import { npm } from "../../lib/scripts/ensure-installed.mjs";

/** The steps that need no build, in the order of how fast they fail: name, script of package.json. */
export const QUICK_STEPS = [
  ["format", "format:check"],
  ["lint", "lint"],
  ["types", "types"],
  ["layers", "layers"],
  ["knowledge lint", "knowledge:lint"],
];

/** Does one step: `run` returns whether it went well and, if it has any, how many tests passed and failed. */
export async function runStep(name, run) {
  process.stdout.write(`\n== ${name} ==\n`);
  const started = performance.now();
  let outcome;
  try {
    outcome = await run();
  } catch (error) {
    process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
    outcome = { ok: false };
  }
  return { name, seconds: (performance.now() - started) / 1000, passed: 0, failed: 0, ...outcome };
}

/** A step that is a script of package.json. */
export function runScript(root, name, script, env = {}) {
  return runStep(name, () => ({
    ok: npm(["run", "--silent", script], { cwd: root, env: { ...process.env, ...env } }).status === 0,
  }));
}

/** A step that is left out because what it needs failed. */
export function skipped(name, why) {
  return { name, ok: false, seconds: 0, passed: 0, failed: 0, note: `not run: ${why}` };
}

/**
 * Prints the table and the closing line, and sets the exit code.
 *
 * A step that fails without a failing test counts as one failure, so that "0 failed" always means that all went well.
 */
export function report(results) {
  const rows = results.map((result) => [
    result.name,
    result.ok ? "ok" : "FAILED",
    `${result.seconds.toFixed(1)} s`,
    result.note ??
      (result.passed + result.failed > 0 ? `${result.passed} passed, ${result.failed} failed` : ""),
  ]);
  const widths = [0, 1, 2].map((column) => Math.max(...rows.map((row) => row[column].length)));
  const lines = rows.map((row) =>
    row
      .map((cell, column) => cell.padEnd(widths[column] ?? 0))
      .join("  ")
      .trimEnd(),
  );
  const passed = results.reduce((sum, result) => sum + result.passed, 0);
  const failed = results.reduce((sum, result) => sum + Math.max(result.failed, result.ok ? 0 : 1), 0);
  process.stdout.write(`\n${lines.join("\n")}\n\n${passed} passed, ${failed} failed\n`);
  process.exitCode = failed === 0 && passed > 0 ? 0 : 1;
}
