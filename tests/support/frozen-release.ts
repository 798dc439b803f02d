import { readFileSync } from "node:fs";
import { join } from "node:path";
import { parseRelease } from "../../lib/knowledge/release.ts";
import type { Knowledge } from "../../lib/knowledge/schema/compiled.ts";

const RELEASES = join(import.meta.dirname, "../../knowledge/releases");

/** A release of the knowledge as it was frozen. */
export function frozenRelease(version: string): Knowledge {
  return parseRelease(readFileSync(join(RELEASES, version, "compiled.json"), "utf8"));
}
