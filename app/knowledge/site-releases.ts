import { compileKnowledge } from "../../lib/knowledge/compile.ts";
import { readKnowledge } from "../../lib/knowledge/read.ts";
import { freezeRelease, openRelease } from "../../lib/knowledge/release.ts";
import type { Knowledge } from "../../lib/knowledge/schema/compiled.ts";
import { knowledgeFiles } from "./knowledge-files.ts";

/** One version of the knowledge that the app gives out. */
export interface SiteRelease {
  readonly knowledge: Knowledge;
  /** The frozen text: what its SHA-256 is of. */
  readonly text: string;
  readonly sha256: string;
  /** False for what the records say now: it may still change under its number. */
  readonly frozen: boolean;
}

/**
 * Every version of the knowledge, newest first; on the server only, while the app is being built.
 *
 * The records count as a version of their own unless they are the newest frozen one to the byte. A frozen release whose sum is
 * not the one beside it stops the build.
 */
export async function readSiteReleases(files: ReadonlyMap<string, string>): Promise<SiteRelease[]> {
  const releases: SiteRelease[] = [];
  for (const [path, text] of files) {
    const folder = /^(releases\/[^/]+)\/compiled\.json$/.exec(path)?.[1];
    if (folder === undefined) continue;
    const [sha256 = ""] = (files.get(`${folder}/SHA256SUMS`) ?? "").split(/\s/);
    releases.push({ knowledge: await openRelease(text, sha256, digest), text, sha256, frozen: true });
  }
  releases.sort((a, b) => newer(a.knowledge.version, b.knowledge.version));
  const knowledge = compileKnowledge(readKnowledge(files));
  const now = await freezeRelease(knowledge, digest);
  if (!releases.some(({ sha256 }) => sha256 === now.sha256)) {
    releases.unshift({ knowledge, ...now, frozen: false });
  }
  return releases;
}

let kept: Promise<SiteRelease[]> | undefined;

/** The versions for the addresses that give them out: read once a build, anew each time while developing. */
export function siteReleases(): Promise<SiteRelease[]> {
  if (process.env.NODE_ENV !== "production") return readSiteReleases(knowledgeFiles());
  kept ??= readSiteReleases(knowledgeFiles());
  return kept;
}

function digest(bytes: Uint8Array<ArrayBuffer>): Promise<ArrayBuffer> {
  return globalThis.crypto.subtle.digest("SHA-256", bytes);
}

/** Order of versions such as 1.10.0 and 1.9.2, the newer first. */
function newer(a: string, b: string): number {
  return b.localeCompare(a, "en", { numeric: true });
}
