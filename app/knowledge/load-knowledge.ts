import { compileKnowledge } from "../../lib/knowledge/compile.ts";
import { readKnowledge } from "../../lib/knowledge/read.ts";
import type { Knowledge } from "../../lib/knowledge/schema/compiled.ts";
import { knowledgeFiles } from "./knowledge-files.ts";

/** Reads and compiles the knowledge folder; on the server only, while the app is being built. */
export function loadKnowledge(): Knowledge {
  return compileKnowledge(readKnowledge(knowledgeFiles()));
}

let kept: Knowledge | undefined;

/** The knowledge for the pages that are made from it: read once a build, anew for each page while developing. */
export function siteKnowledge(): Knowledge {
  if (process.env.NODE_ENV !== "production") return loadKnowledge();
  kept ??= loadKnowledge();
  return kept;
}
