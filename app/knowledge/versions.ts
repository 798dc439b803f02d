import { type ComparedCase, compareCases } from "../../lib/case/index.ts";
import { typicalPriors } from "../../lib/engine/index.ts";
import { compileKnowledge } from "../../lib/knowledge/compile.ts";
import { diffKnowledge, type KnowledgeDiff } from "../../lib/knowledge/diff.ts";
import { readKnowledge } from "../../lib/knowledge/read.ts";
import { freezeRelease, openRelease } from "../../lib/knowledge/release.ts";
import type { Knowledge } from "../../lib/knowledge/schema/compiled.ts";
import { knowledgeFiles } from "./knowledge-files.ts";

/** One version of the knowledge; without a sum it is what the records say now and not frozen. */
export interface KnowledgeVersion {
  readonly knowledge: Knowledge;
  readonly sha256: string | undefined;
}

/** What one version changed from the one before. */
export interface VersionChange {
  readonly before: KnowledgeVersion;
  readonly after: KnowledgeVersion;
  readonly diff: KnowledgeDiff;
  readonly cases: readonly ComparedCase[];
}

/**
 * Every version of the knowledge, newest first, and what each changed; on the server only, while the app is being built.
 *
 * The records count as a version of their own unless they are the newest frozen one to the byte. A frozen release whose sum is
 * not the one beside it stops the build.
 */
export async function siteVersions(): Promise<{ versions: KnowledgeVersion[]; changes: VersionChange[] }> {
  const files = knowledgeFiles();
  const authored = readKnowledge(files);
  const versions: KnowledgeVersion[] = [];
  for (const [path, text] of files) {
    const folder = /^(releases\/[^/]+)\/compiled\.json$/.exec(path)?.[1];
    if (folder === undefined) continue;
    const [sha256 = ""] = (files.get(`${folder}/SHA256SUMS`) ?? "").split(/\s/);
    versions.push({ knowledge: await openRelease(text, sha256, digest), sha256 });
  }
  versions.sort((a, b) => newer(a.knowledge.version, b.knowledge.version));
  const now = compileKnowledge(authored);
  const frozen = await freezeRelease(now, digest);
  if (!versions.some(({ sha256 }) => sha256 === frozen.sha256)) {
    versions.unshift({ knowledge: now, sha256: undefined });
  }
  const changes = versions.flatMap((after, i) => {
    const before = versions[i + 1];
    if (before === undefined) return [];
    const diff = diffKnowledge(before.knowledge, after.knowledge, typicalPriors);
    return [
      { before, after, diff, cases: compareCases(before.knowledge, after.knowledge, authored.workedCases) },
    ];
  });
  return { versions, changes };
}

function digest(bytes: Uint8Array<ArrayBuffer>): Promise<ArrayBuffer> {
  return globalThis.crypto.subtle.digest("SHA-256", bytes);
}

/** Order of versions such as 1.10.0 and 1.9.2, the newer first. */
function newer(a: string, b: string): number {
  return b.localeCompare(a, "en", { numeric: true });
}
