import { join } from "node:path";
import { build } from "esbuild";
import { keptFiles } from "./kept-files.mjs";

/** Bundles the service worker with the list of what it keeps; returns how many files that are. */
export async function makeServiceWorker(root, next, pages) {
  const kept = await keptFiles(next, pages);
  await build({
    entryPoints: [join(root, "app/offline/service-worker.ts")],
    outfile: join(root, "public/sw.js"),
    bundle: true,
    minify: true,
    format: "iife",
    target: "es2022",
    legalComments: "none",
    define: {
      "process.env.NODE_ENV": '"production"',
      KEPT_FILES: JSON.stringify(kept.entries),
      KEPT_PAGES: JSON.stringify(kept.pages),
    },
  });
  return kept.entries.length;
}
