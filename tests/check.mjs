// `npm run check`: what to run before a commit. Format, lint, types, layers, knowledge lint, unit tests.
import { rmSync } from "node:fs";
import { join } from "node:path";
import { ensureInstalled, nodeProblem } from "../lib/scripts/ensure-installed.mjs";
import { QUICK_STEPS, report, runScript } from "./support/steps.mjs";
import { runUnitTests } from "./support/unit-step.mjs";

const ROOT = join(import.meta.dirname, "..");
const problem = nodeProblem();
if (problem !== undefined || !ensureInstalled(ROOT, (line) => process.stdout.write(`${line}\n`))) {
  process.stderr.write(`${problem ?? "The packages could not be installed."}\n`);
  process.exit(1);
}
rmSync(join(ROOT, "reports", "vitest.json"), { force: true });
const results = [];
for (const [name, script] of QUICK_STEPS) results.push(await runScript(ROOT, name, script));
results.push(await runUnitTests(ROOT));
report(results);
