import { readdirSync, readFileSync } from "node:fs";
import { join, relative, sep } from "node:path";
import { compileKnowledge } from "../../lib/knowledge/compile.ts";
import { readKnowledge } from "../../lib/knowledge/read.ts";
import type { Knowledge } from "../../lib/knowledge/schema/compiled.ts";

const FOLDER = join(import.meta.dirname, "../../knowledge");
const NOT_AUTHORED = new Set(["releases", "json-schema", "measured", "exercises"]);

/** Files of the knowledge folder as the reader takes them: path within it, text. */
export function shippedFiles(): Map<string, string> {
  const files = new Map<string, string>();
  for (const entry of readdirSync(FOLDER, { recursive: true, withFileTypes: true })) {
    const path = relative(FOLDER, join(entry.parentPath, entry.name)).split(sep).join("/");
    if (!entry.isFile() || !path.endsWith(".json") || NOT_AUTHORED.has(path.split("/")[0] ?? "")) continue;
    files.set(path, readFileSync(join(FOLDER, path), "utf8"));
  }
  return files;
}

let kept: Knowledge | undefined;

/** The knowledge that the repository ships, compiled once. */
export function shippedKnowledge(): Knowledge {
  kept ??= compileKnowledge(readKnowledge(shippedFiles()));
  return kept;
}
