import { canonicalJson } from "../../lib/knowledge/canonical.ts";
import { compileKnowledge } from "../../lib/knowledge/compile.ts";
import { readKnowledge } from "../../lib/knowledge/read.ts";
import type { Knowledge } from "../../lib/knowledge/schema/compiled.ts";
import { knowledgeFiles } from "./knowledge-files.ts";

/**
 * Reads and compiles the knowledge folder; on the server only, while the app is being built.
 *
 * As its release says it: a page then lists the same things in the same order as one that is set in the browser.
 */
export function loadKnowledge(): Knowledge {
  return JSON.parse(canonicalJson(compileKnowledge(readKnowledge(knowledgeFiles())))) as Knowledge;
}

let kept: Knowledge | undefined;

/** The knowledge for the pages that are made from it: read once a build, anew for each page while developing. */
export function siteKnowledge(): Knowledge {
  if (process.env.NODE_ENV !== "production") return loadKnowledge();
  kept ??= loadKnowledge();
  return kept;
}
