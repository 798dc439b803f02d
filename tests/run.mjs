// `npm test`: everything, from a clean checkout. Installs what is missing, checks, builds, tests; the last line counts.
import { spawnSync } from "node:child_process";
import { mkdirSync, rmSync } from "node:fs";
import { join } from "node:path";
import { ensureInstalled, nodeProblem } from "../lib/scripts/ensure-installed.mjs";
import { freePort } from "../lib/scripts/free-port.mjs";
import { ensureBrowser } from "./support/ensure-browser.mjs";
import { ensurePostgres } from "./support/find-postgres.mjs";
import { QUICK_STEPS, report, runScript, runStep, skipped } from "./support/steps.mjs";
import { playwrightCounts } from "./support/test-reports.mjs";
import { runUnitTests } from "./support/unit-step.mjs";

const ROOT = join(import.meta.dirname, "..");
const REPORTS = join(ROOT, "reports");
const say = (line) => process.stdout.write(`${line}\n`);

function stop(message) {
  process.stderr.write(`${message}\n`);
  say("0 passed, 1 failed");
  process.exit(1);
}

function runBrowserTests(browser, port) {
  return runStep("browser tests", () => {
    const playwright = join(ROOT, "node_modules", "@playwright", "test", "cli.js");
    const run = spawnSync(process.execPath, [playwright, "test"], {
      cwd: ROOT,
      stdio: "inherit",
      env: { ...process.env, E2E_CHROMIUM: browser, E2E_PORT: String(port) },
    });
    const counts = playwrightCounts(join(REPORTS, "playwright.json"));
    return { ...counts, ok: counts.ok && run.status === 0 };
  });
}

const problem = nodeProblem();
if (problem !== undefined) stop(problem);
if (!ensureInstalled(ROOT, say)) stop("The packages could not be installed.");
// Reports of an earlier run must not be counted.
rmSync(REPORTS, { recursive: true, force: true });
mkdirSync(REPORTS, { recursive: true });

const results = [];
let browser;
results.push(
  await runStep("browser", async () => {
    browser = await ensureBrowser(ROOT);
    return { ok: true, note: browser };
  }),
);
results.push(await runStep("database server", () => ({ ok: true, note: ensurePostgres() })));
for (const [name, script] of QUICK_STEPS) results.push(await runScript(ROOT, name, script));
const build = await runScript(ROOT, "build", "build", { NEXT_TELEMETRY_DISABLED: "1" });
results.push(build, await runUnitTests(ROOT));
if (!build.ok) results.push(skipped("browser tests", "the build failed"));
else if (browser === undefined) results.push(skipped("browser tests", "no browser"));
else results.push(await runBrowserTests(browser, await freePort(3210, "127.0.0.1")));
report(results);
