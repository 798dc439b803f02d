import { existsSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import { CornerwiseError } from "../errors.ts";
import { compileKnowledge } from "../knowledge/compile.ts";
import { readKnowledge } from "../knowledge/read.ts";
import { openRelease, parseRelease } from "../knowledge/release.ts";
import type { Authored } from "../knowledge/schema/authored.ts";
import type { Knowledge } from "../knowledge/schema/compiled.ts";
import { frozenReleases, isFolder, RELEASE_FILE, readKnowledgeFolder, readText, sha256 } from "./files.ts";
import { packageFolder } from "./package-folder.ts";

/** Lines about `--knowledge` for the help of commands that take it. */
export const KNOWLEDGE_HELP = `  --knowledge FOLDER|FILE  knowledge to use instead of the one that comes with the
                           library: a folder of records, a release's folder, or
                           a compiled.json`;

/**
 * The knowledge that a command works with.
 *
 * Without a path: the release bundled with the library, else the repository's own knowledge folder.
 * With one: a folder of records (compiled here), a release's folder (its SHA-256 is verified) or a compiled.json.
 * Errors  "not-found", "not-readable" or "bad-record", each with the path.
 */
export async function loadKnowledge(path: string | undefined, cwd: string): Promise<Knowledge> {
  if (path !== undefined) return fromPath(resolve(cwd, path));
  const bundled = join(packageFolder(), "release", RELEASE_FILE);
  if (existsSync(bundled)) return fromPath(dirname(bundled));
  const folder = repositoryKnowledge();
  if (folder !== undefined) return fromPath(folder);
  throw new CornerwiseError(
    "not-found",
    `no knowledge comes with this copy of the library (${bundled}). Build the library, or name one with --knowledge.`,
  );
}

/**
 * The folder of records that a command works on: the one named, else knowledge/ below the working folder, else the repository's.
 *
 * Errors  "not-found" when there is none.
 */
export function knowledgeFolder(path: string | undefined, cwd: string): string {
  if (path !== undefined) return resolve(cwd, path);
  const here = join(cwd, "knowledge");
  if (existsSync(join(here, "manifest.json"))) return here;
  const folder = repositoryKnowledge();
  if (folder !== undefined) return folder;
  throw new CornerwiseError("not-found", `there is no knowledge folder in ${cwd}. Name one.`);
}

/** Read and compile a folder of records. */
export function loadFolder(folder: string): { authored: Authored; knowledge: Knowledge } {
  const authored = readKnowledge(readKnowledgeFolder(folder));
  return { authored, knowledge: compileKnowledge(authored) };
}

/** The knowledge folder beside the library's own folder, when this is the repository. */
function repositoryKnowledge(): string | undefined {
  const folder = join(dirname(packageFolder()), "knowledge");
  return existsSync(join(folder, "manifest.json")) ? folder : undefined;
}

async function fromPath(path: string): Promise<Knowledge> {
  try {
    if (!isFolder(path)) return parseRelease(readText(path));
    const file = join(path, RELEASE_FILE);
    if (!existsSync(file)) return loadFolder(path).knowledge;
    const sums = join(path, "SHA256SUMS");
    if (!existsSync(sums)) return parseRelease(readText(file));
    const [expected = ""] = readText(sums).split(/\s+/);
    return await openRelease(readText(file), expected, sha256);
  } catch (cause) {
    if (!(cause instanceof CornerwiseError) || cause.code === "not-found") throw cause;
    const code = cause.code === "not-readable" ? "not-readable" : "bad-record";
    throw new CornerwiseError(code, `${path}: ${cause.message}`, cause.details, { cause });
  }
}

/** A version of the knowledge named on the command line: a path, or the version of a frozen release. */
export async function loadVersion(name: string, cwd: string): Promise<Knowledge> {
  if (!existsSync(resolve(cwd, name)) && /^\d+\.\d+\.\d+$/.test(name)) {
    const releases = frozenReleases(knowledgeFolder(undefined, cwd));
    const release = releases.find(({ version }) => version === name);
    if (release !== undefined) return fromPath(release.folder);
    const known = releases.map(({ version }) => version).join(", ") || "none";
    throw new CornerwiseError("not-found", `release ${name} is not frozen here. Frozen: ${known}.`);
  }
  return fromPath(resolve(cwd, name));
}
