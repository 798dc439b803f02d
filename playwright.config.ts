import { mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { defineConfig } from "@playwright/test";
import { BROWSER_ADVICE, findBrowser } from "./tests/support/find-browser.mjs";

const executablePath = await findBrowser();
if (executablePath === undefined) throw new Error(BROWSER_ADVICE);

const port = Number(process.env.E2E_PORT ?? 3210);
const url = `http://127.0.0.1:${port}`;

// A database of the run's own; set once, as this file is read again by every worker.
process.env.E2E_DATABASE ??= join(mkdtempSync(join(tmpdir(), "cornerwise-browser-")), "cornerwise.db");

/**
 * Browser tests on the production build (`npm run build` first).
 *
 * Phone first: every test runs at phone size unless its title says `@desktop`; `@both` runs it at both sizes.
 */
export default defineConfig({
  testDir: "tests/browser",
  globalTeardown: "tests/browser/remove-database.ts",
  outputDir: "test-results",
  workers: 1,
  fullyParallel: false,
  forbidOnly: process.env.CI !== undefined,
  retries: 0,
  timeout: 60_000,
  expect: { timeout: 10_000 },
  // Not in test-results/: that folder is emptied when a run starts.
  reporter: [["list"], ["json", { outputFile: "reports/playwright.json" }]],
  use: {
    baseURL: url,
    // Each page from the server, as a first visit has it; tests of what works without a network allow them.
    serviceWorkers: "block",
    locale: "en-GB",
    timezoneId: "Europe/London",
    trace: "retain-on-failure",
    launchOptions: { executablePath },
  },
  projects: [
    {
      name: "phone",
      grepInvert: /@desktop\b/,
      use: { viewport: { width: 390, height: 844 }, deviceScaleFactor: 2, hasTouch: true, isMobile: true },
    },
    {
      name: "desktop",
      grep: /@(desktop|both)\b/,
      use: { viewport: { width: 1280, height: 800 } },
    },
  ],
  webServer: {
    command: "node lib/scripts/serve.mjs",
    url,
    reuseExistingServer: false,
    timeout: 60_000,
    env: {
      NEXT_TELEMETRY_DISABLED: "1",
      HOST: "127.0.0.1",
      PORT: String(port),
      CORNERWISE_DATABASE: process.env.E2E_DATABASE,
    },
  },
});
