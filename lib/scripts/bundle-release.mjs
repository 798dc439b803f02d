// Puts a release beside the library: knowledge/ compiled, or the newest frozen one when knowledge/ cannot be compiled.
import { existsSync, rmSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { frozenReleases, readText, sha256, writeRelease } from "../dist/cli/files.js";
import { loadFolder } from "../dist/cli/load-knowledge.js";
import { sha256Hex } from "../dist/knowledge/canonical.js";
import { freezeRelease } from "../dist/knowledge/release.js";
import { putInPlace } from "./put-in-place.mjs";

const LIB = dirname(dirname(fileURLToPath(import.meta.url)));
const KNOWLEDGE = join(dirname(LIB), "knowledge");

async function newestRelease(problem) {
  const [newest] = frozenReleases(KNOWLEDGE);
  if (newest === undefined) throw problem;
  process.stderr.write(
    `cornerwise: bundling the frozen release ${newest.version}, because: ${problem.message}\n`,
  );
  const text = readText(join(newest.folder, "compiled.json"));
  return { text, sha256: await sha256Hex(text, sha256) };
}

try {
  if (!existsSync(KNOWLEDGE)) throw new Error(`there is no knowledge folder ${KNOWLEDGE}`);
  let release;
  try {
    release = await freezeRelease(loadFolder(KNOWLEDGE).knowledge, sha256);
  } catch (problem) {
    release = await newestRelease(problem);
  }
  const aside = join(LIB, "node_modules", `.cornerwise-${process.pid}`);
  try {
    writeRelease(join(aside, "release"), release);
    putInPlace(join(aside, "release"), join(LIB, "release"));
  } finally {
    rmSync(aside, { recursive: true, force: true });
  }
} catch (problem) {
  process.stderr.write(`cornerwise: no release was bundled: ${problem.message}\n`);
  process.exitCode = 3;
}
