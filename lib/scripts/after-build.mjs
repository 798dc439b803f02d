// After `next build`: makes the pages fit the content security policy, and the service worker that keeps the app on a device. May
// be run again on the same build.
import { mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { moveInlineScripts, refusedByPolicy } from "./inline-scripts.mjs";
import { pagesOfBuild } from "./pages-of-build.mjs";
import { serverErrorPage } from "./server-error-page.mjs";
import { makeServiceWorker } from "./service-worker.mjs";

const ROOT = dirname(dirname(dirname(fileURLToPath(import.meta.url))));
const NEXT = join(ROOT, ".next");

/** Below static/, so that the server gives them out as what never changes. */
const INLINE = "static/inline";

/** What the framework writes for "the server failed". */
const FAILED = [join(NEXT, "server/app/_global-error.html"), join(NEXT, "server/pages/500.html")];

function fitPolicy(pages) {
  const folder = join(NEXT, INLINE);
  mkdirSync(folder, { recursive: true });
  const refused = [];
  let count = 0;
  for (const { file } of pages) {
    const { page, files } = moveInlineScripts(readFileSync(file, "utf8"), `/_next/${INLINE}`);
    for (const [name, text] of files) writeFileSync(join(folder, name), text);
    if (files.size > 0) writeFileSync(file, page);
    count += files.size;
    const found = refusedByPolicy(page);
    if (found.length > 0) refused.push(`${file}: ${found.join(", ")}`);
  }
  if (refused.length > 0) {
    throw new Error(
      `the content security policy would refuse parts of these pages:\n${refused.slice(0, 20).join("\n")}`,
    );
  }
  return count;
}

try {
  const pages = pagesOfBuild(NEXT);
  if (pages.length === 0) throw new Error(`no page was found in ${NEXT}. Run next build first.`);
  const failed = serverErrorPage(readFileSync(join(NEXT, "server/app/index.html"), "utf8"));
  for (const file of FAILED) writeFileSync(file, failed);
  const scripts = fitPolicy(pages);
  const kept = await makeServiceWorker(ROOT, NEXT, pages);
  process.stdout.write(
    `${pages.length} pages, ${scripts} inline scripts moved into files; ${kept} files for use without a network\n`,
  );
} catch (problem) {
  // Without it the build counts as unfinished: no server starts on pages whose scripts the policy refuses.
  rmSync(join(NEXT, "BUILD_ID"), { force: true });
  process.stderr.write(`after the build: ${problem.message}\n`);
  process.exitCode = 1;
}
