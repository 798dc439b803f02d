import { readdirSync, readFileSync } from "node:fs";
import { join, relative, sep } from "node:path";

/** Every file of the knowledge folder: path within it, text; on the server only, while the app is being built. */
export function knowledgeFiles(): Map<string, string> {
  const folder = join(process.cwd(), "knowledge");
  const files = new Map<string, string>();
  for (const entry of readdirSync(/* turbopackIgnore: true */ folder, {
    recursive: true,
    withFileTypes: true,
  })) {
    if (!entry.isFile()) continue;
    const path = join(entry.parentPath, entry.name);
    files.set(
      relative(folder, path).split(sep).join("/"),
      readFileSync(/* turbopackIgnore: true */ path, "utf8"),
    );
  }
  return files;
}
