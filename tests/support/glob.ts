import { readdirSync } from "node:fs";
import { join, sep } from "node:path";

const SKIPPED = new Set([
  "node_modules",
  ".git",
  ".next",
  "dist",
  "release",
  "reports",
  "coverage",
  "test-results",
]);

/** Every file below a folder, as paths from it with forward slashes; what tools make is left out. */
export function filesBelow(root: string, folder = ""): string[] {
  return readdirSync(join(root, folder), { withFileTypes: true }).flatMap((entry) => {
    if (SKIPPED.has(entry.name)) return [];
    const path = join(folder, entry.name);
    return entry.isDirectory() ? filesBelow(root, path) : [path.split(sep).join("/")];
  });
}

/** Whether a path matches a glob of `**`, `*` and `{a,b}`. */
export function matchesGlob(path: string, glob: string): boolean {
  const pattern = glob
    .replaceAll(/[.+^$()|[\]\\]/g, "\\$&")
    .replaceAll(/\{([^}]*)\}/g, (_, options: string) => `(?:${options.replaceAll(",", "|")})`)
    .replaceAll(/\*\*\/|\*\*|\*/g, (star) => (star === "**/" ? "(?:.*/)?" : star === "**" ? ".*" : "[^/]*"));
  return new RegExp(`^${pattern}$`).test(path);
}
