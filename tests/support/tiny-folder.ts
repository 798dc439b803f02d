import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { onTestFinished } from "vitest";
import { type TinyChange, tinyFiles } from "./tiny-knowledge.ts";

/** Write the tiny knowledge into a folder of its own, which goes when the test ends. */
export function tinyFolder(change?: TinyChange): string {
  const folder = mkdtempSync(join(tmpdir(), "cornerwise-"));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  writeTiny(folder, change);
  return folder;
}

/** Write the tiny knowledge over what lies in the folder; records that are no longer there are removed. */
export function writeTiny(folder: string, change?: TinyChange): void {
  const files = tinyFiles(change);
  for (const path of tinyFiles().keys()) {
    if (!files.has(path)) rmSync(join(folder, path), { force: true });
  }
  for (const [path, text] of files) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), text);
  }
}
