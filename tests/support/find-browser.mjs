// Which Chrome or Chromium the browser tests drive.
import { existsSync } from "node:fs";
import { delimiter, join } from "node:path";

const NAMES = [
  "chromium",
  "chromium-browser",
  "google-chrome-stable",
  "google-chrome",
  "chrome",
  "microsoft-edge",
  "microsoft-edge-stable",
];

const FIXED = [
  "/opt/google/chrome/chrome",
  "/snap/bin/chromium",
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
  "/Applications/Chromium.app/Contents/MacOS/Chromium",
  "/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge",
  "C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe",
  "C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe",
  "C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe",
];

export const BROWSER_ADVICE =
  "No Chrome or Chromium was found. Install one, run `npx playwright install --with-deps chromium`, or name one in E2E_CHROMIUM.";

function onPath() {
  const folders = (process.env.PATH ?? "").split(delimiter).filter(Boolean);
  const endings = process.platform === "win32" ? [".exe", ""] : [""];
  return NAMES.flatMap((name) =>
    folders.flatMap((folder) => endings.map((ending) => join(folder, name + ending))),
  ).find((path) => existsSync(path));
}

/**
 * The browser to drive: the one named in E2E_CHROMIUM, one on the PATH, one at a usual place, Playwright's own.
 *
 * Undefined when there is none. Errors when E2E_CHROMIUM names a file that is not there.
 */
export async function findBrowser() {
  const named = process.env.E2E_CHROMIUM;
  if (named) {
    if (!existsSync(named)) throw new Error(`E2E_CHROMIUM names ${named}, which is not there.`);
    return named;
  }
  const installed = onPath() ?? FIXED.find((path) => existsSync(path));
  if (installed !== undefined) return installed;
  const { chromium } = await import("@playwright/test");
  const own = chromium.executablePath();
  return existsSync(own) ? own : undefined;
}
