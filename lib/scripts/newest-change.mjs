import { existsSync, readdirSync, statSync } from "node:fs";
import { join } from "node:path";

const MADE = new Set(["node_modules", "dist", "release", ".next", "coverage", "reports", "sw.js"]);

/**
 * When something below these paths was last changed, in ms; folders count too, as a removed file shows only there.
 *
 * Paths that are not there count as never.
 */
export function newestChange(root, paths) {
  return Math.max(0, ...paths.map((path) => changeOf(join(root, path))));
}

function changeOf(path) {
  if (!existsSync(path)) return 0;
  const stats = statSync(path);
  if (!stats.isDirectory()) return stats.mtimeMs;
  const inner = readdirSync(path)
    .filter((name) => !MADE.has(name))
    .map((name) => changeOf(join(path, name)));
  // The folder that holds dist/ changes when dist/ is made: its own time tells nothing.
  const own = readdirSync(path).some((name) => MADE.has(name)) ? 0 : stats.mtimeMs;
  return Math.max(own, ...inner);
}
