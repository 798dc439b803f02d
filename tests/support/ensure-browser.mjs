// A browser for the browser tests: what is there, else Playwright's own, else Debian's.
import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { BROWSER_ADVICE, findBrowser } from "./find-browser.mjs";

const run = (command, args, options = {}) =>
  spawnSync(command, args, { stdio: "inherit", ...options }).status === 0;

function download(root) {
  const playwright = (...args) =>
    run(process.execPath, [join(root, "node_modules", "@playwright", "test", "cli.js"), ...args], {
      cwd: root,
      // It may try for minutes where there is no way out; Debian's package is next.
      timeout: 300_000,
    });
  if (!playwright("install", "chromium")) return false;
  // The browser is there; a bare Linux lacks the libraries that it needs, and only root can add them.
  return process.platform !== "linux" || process.getuid?.() !== 0 || playwright("install-deps", "chromium");
}

function installPackage() {
  if (process.platform !== "linux" || process.getuid?.() !== 0) return false;
  if (spawnSync("apt-get", ["--version"]).status !== 0) return false;
  const env = { ...process.env, DEBIAN_FRONTEND: "noninteractive" };
  return (
    run("apt-get", ["update"], { env }) &&
    run("apt-get", ["install", "-y", "--no-install-recommends", "chromium"], { env })
  );
}

/** The path of a browser, installing one when there is none. Errors when none can be had, naming the remedies. */
export async function ensureBrowser(root) {
  const ways = [() => true, () => download(root), installPackage];
  for (const way of ways) {
    if (!way()) continue;
    const found = await findBrowser();
    if (found !== undefined) return found;
  }
  throw new Error(BROWSER_ADVICE);
}
