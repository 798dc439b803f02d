import { type ComparedCase, compareCases } from "../../lib/case/index.ts";
import { typicalPriors } from "../../lib/engine/index.ts";
import { diffKnowledge, type KnowledgeDiff } from "../../lib/knowledge/diff.ts";
import { readKnowledge } from "../../lib/knowledge/read.ts";
import type { Knowledge } from "../../lib/knowledge/schema/compiled.ts";
import { knowledgeFiles } from "./knowledge-files.ts";
import { readSiteReleases } from "./site-releases.ts";

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

/** Every version of the knowledge, newest first, and what each changed; on the server only, while the app is being built. */
export async function siteVersions(): Promise<{ versions: KnowledgeVersion[]; changes: VersionChange[] }> {
  const files = knowledgeFiles();
  const { workedCases } = readKnowledge(files);
  const releases = await readSiteReleases(files);
  const versions = releases.map(({ knowledge, sha256, frozen }) => ({
    knowledge,
    sha256: frozen ? sha256 : undefined,
  }));
  const changes = versions.flatMap((after, i) => {
    const before = versions[i + 1];
    if (before === undefined) return [];
    const diff = diffKnowledge(before.knowledge, after.knowledge, typicalPriors);
    return [{ before, after, diff, cases: compareCases(before.knowledge, after.knowledge, workedCases) }];
  });
  return { versions, changes };
}
