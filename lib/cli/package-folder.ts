import { existsSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

/** Folder of this package, whether it runs from its sources or from dist/. */
export function packageFolder(): string {
  let folder = dirname(fileURLToPath(import.meta.url));
  while (dirname(folder) !== folder) {
    const manifest = join(folder, "package.json");
    if (existsSync(manifest) && JSON.parse(readFileSync(manifest, "utf8")).name === "cornerwise")
      return folder;
    folder = dirname(folder);
  }
  return dirname(fileURLToPath(import.meta.url));
}
