import { createHash } from "node:crypto";
import { copyFileSync, existsSync, mkdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { getManifest } from "@serwist/build";

/** Where the pages lie as files that never change: what is fetched while a version is being kept is then all of one build. */
const COPIES = "static/offline";

/** Pages of single records: one page that sets any of them in the browser stands in for all. */
const RECORD_PAGE = /^\/(parts|checks|findings)\/./;

/** Files with an address of their own that may hold something else after the next build. */
const CHANGING = ["/icon.svg", "/knowledge/index.json", "/manifest.webmanifest"];

/** Address of one file that never changes, once it lies below static/. */
const addressOf = (path) => `/_next/${path}`;

/**
 * What a device keeps to work without a network.
 *
 * Shape   next: the build's folder; pages: as `pagesOfBuild` gives them, their inline scripts already moved.
 *         Returns the list for the precache and, by address, the files of each page.
 */
export async function keptFiles(next, pages) {
  const kept = pages.filter(({ address }) => address !== undefined && !RECORD_PAGE.test(address));
  mkdirSync(join(next, COPIES), { recursive: true });
  const byAddress = {};
  const inline = new Set();
  for (const { file, address } of kept) {
    const html = readFileSync(file, "utf8");
    for (const [, path] of html.matchAll(/src="\/_next\/(static\/inline\/[^"]+)"/g)) inline.add(path);
    byAddress[address] = {
      html: addressOf(copyByHash(next, file, "html")),
      data: addressOf(copyByHash(next, file.replace(/\.html$/, ".rsc"), "rsc")),
    };
  }
  const { manifestEntries, warnings } = await getManifest({
    globDirectory: next,
    globPatterns: ["static/chunks/**", "static/media/**", "static/*/_*.js", `${COPIES}/**`, ...inline],
    globIgnores: ["**/*.map"],
    modifyURLPrefix: { "": "/_next/" },
    dontCacheBustURLsMatching: /^\/?_next\/static\//,
    maximumFileSizeToCacheInBytes: 8_000_000,
  });
  if (warnings.length > 0) throw new Error(warnings.join("\n"));
  const entries = manifestEntries ?? [];
  entries.push(...CHANGING.map((address) => changing(next, address)), newestKnowledge(next));
  return { entries: entries.sort((a, b) => (a.url < b.url ? -1 : 1)), pages: byAddress };
}

function copyByHash(next, file, suffix) {
  const hash = createHash("sha256").update(readFileSync(file)).digest("hex").slice(0, 20);
  const path = `${COPIES}/${hash}.${suffix}`;
  copyFileSync(file, join(next, path));
  return path;
}

function bodyOf(next, address) {
  const file = join(next, "server/app", `${address.slice(1)}.body`);
  if (!existsSync(file)) throw new Error(`the build made no ${address} (${file})`);
  return readFileSync(file);
}

/** With its sum, so that what another build put there meanwhile is refused and the version tried again later. */
function changing(next, address) {
  const digest = createHash("sha256").update(bodyOf(next, address)).digest("base64");
  return { url: address, revision: digest.slice(0, 20), integrity: `sha256-${digest}` };
}

function newestKnowledge(next) {
  const [newest] = JSON.parse(bodyOf(next, "/knowledge/index.json").toString("utf8"));
  return { url: `/knowledge/${newest.sha256}.json`, revision: null };
}
