import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { join, relative, sep } from "node:path";
import { CornerwiseError } from "../errors.ts";
import type { Release } from "../knowledge/release.ts";

/** Folders of the knowledge that hold no authored records. */
const NOT_RECORDS = new Set(["releases", "json-schema", "measured", "exercises"]);

/** Name of the frozen knowledge in a release's folder. */
export const RELEASE_FILE = "compiled.json";

/**
 * Every authored file of a knowledge folder: path relative to it, with "/" between, -> text.
 *
 * Errors  "not-found" when it is no folder or holds no manifest.json.
 */
export function readKnowledgeFolder(folder: string): Map<string, string> {
  if (!existsSync(join(folder, "manifest.json"))) {
    throw new CornerwiseError(
      "not-found",
      `${folder} is no knowledge folder: it has no manifest.json. Name the folder that holds manifest.json, parts/, faults/ ...`,
    );
  }
  const files = new Map<string, string>();
  const walk = (at: string): void => {
    for (const entry of readdirSync(at, { withFileTypes: true })) {
      const path = join(at, entry.name);
      if (entry.name.startsWith(".")) continue;
      if (entry.isDirectory()) {
        if (at !== folder || !NOT_RECORDS.has(entry.name)) walk(path);
      } else files.set(relative(folder, path).split(sep).join("/"), readText(path));
    }
  };
  walk(folder);
  return files;
}

/**
 * Text of a file.
 *
 * Errors  "not-found" or "not-readable", with the path.
 */
export function readText(path: string): string {
  if (!existsSync(path)) {
    throw new CornerwiseError("not-found", `there is no file ${path}. Check the path.`);
  }
  try {
    return readFileSync(path, "utf8");
  } catch (cause) {
    const what = cause instanceof Error ? cause.message : String(cause);
    throw new CornerwiseError(
      "not-readable",
      `${path} cannot be read (${what}). Check what it is.`,
      {},
      { cause },
    );
  }
}

/** Whether the path is a folder. */
export function isFolder(path: string): boolean {
  return existsSync(path) && statSync(path).isDirectory();
}

/** Frozen releases in a knowledge folder: version and folder, newest version first. */
export function frozenReleases(knowledgeFolder: string): { version: string; folder: string }[] {
  const releases = join(knowledgeFolder, "releases");
  if (!isFolder(releases)) return [];
  return readdirSync(releases)
    .filter((version) => existsSync(join(releases, version, RELEASE_FILE)))
    .map((version) => ({ version, folder: join(releases, version) }))
    .sort((a, b) => compareVersions(b.version, a.version));
}

/** Order of two versions such as 1.10.0 and 1.9.2: below 0 when the first is the older. */
export function compareVersions(a: string, b: string): number {
  const [x, y] = [a, b].map((version) => version.split(".").map(Number));
  for (let i = 0; i < 3; i += 1) {
    const difference = (x?.[i] ?? 0) - (y?.[i] ?? 0);
    if (difference !== 0) return difference;
  }
  return 0;
}

/** Text of a SHA256SUMS file that `sha256sum --check` reads. */
export function sha256Sums(release: Release): string {
  return `${release.sha256}  ${RELEASE_FILE}\n`;
}

/**
 * Write a release into a folder: compiled.json and SHA256SUMS.
 *
 * Returns "written", or "same" when it is there already.
 * Errors  "bad-record" when another release lies there.
 */
export function writeRelease(folder: string, release: Release): "written" | "same" {
  const path = join(folder, RELEASE_FILE);
  if (existsSync(path)) {
    const sums = join(folder, "SHA256SUMS");
    const same = readText(path) === release.text;
    if (same && existsSync(sums) && readText(sums) === sha256Sums(release)) return "same";
    if (!same) {
      throw new CornerwiseError(
        "bad-record",
        `${path} holds a different release of that version; a frozen release is never changed. Raise "version" in manifest.json and freeze again.`,
        { path },
      );
    }
  }
  mkdirSync(folder, { recursive: true });
  writeFileSync(path, release.text);
  writeFileSync(join(folder, "SHA256SUMS"), sha256Sums(release));
  return "written";
}

/** SHA-256 of bytes through this process's Web Crypto. */
export function sha256(bytes: Uint8Array<ArrayBuffer>): Promise<ArrayBuffer> {
  return globalThis.crypto.subtle.digest("SHA-256", bytes);
}
