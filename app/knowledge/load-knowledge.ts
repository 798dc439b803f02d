import { readdirSync, readFileSync } from "node:fs";
import { join, relative, sep } from "node:path";
import { compileKnowledge } from "../../lib/knowledge/compile.ts";
import { readKnowledge } from "../../lib/knowledge/read.ts";
import type { Knowledge } from "../../lib/knowledge/schema/compiled.ts";

/** Reads and compiles the knowledge folder; on the server only, while the app is being built. */
export function loadKnowledge(): Knowledge {
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
  return compileKnowledge(readKnowledge(files));
}

let kept: Knowledge | undefined;

/** The knowledge for the pages that are made from it: read once a build, anew for each page while developing. */
export function siteKnowledge(): Knowledge {
  if (process.env.NODE_ENV !== "production") return loadKnowledge();
  kept ??= loadKnowledge();
  return kept;
}
