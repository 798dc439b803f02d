// Makes dist/ and release/ when they are missing or older than what they are made from.
import { spawnSync } from "node:child_process";
import { existsSync, readdirSync, readFileSync, rmSync, statSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { putInPlace } from "./put-in-place.mjs";

const LIB = dirname(dirname(fileURLToPath(import.meta.url)));
const MAIN = join(LIB, "dist", "cli", "main.js");
const RELEASE = join(LIB, "release", "compiled.json");
const KNOWLEDGE = join(dirname(LIB), "knowledge");
const SKIPPED = new Set(["dist", "release", "node_modules", "releases", "json-schema", "measured"]);

/**
 * Build what is missing or old; says so through `say`.
 *
 * Returns whether there is something to run. Types are not checked here: `npm run types` does that.
 */
export function ensureBuilt(say) {
  if (existsSync(join(LIB, "cli", "main.ts")) && isOld(MAIN, LIB, ".ts")) {
    say("cornerwise: building the library ...");
    const problem = compile();
    if (problem !== undefined) {
      say(`cornerwise: the library could not be built. ${problem}`);
      return false;
    }
  }
  if (!existsSync(MAIN)) {
    say(`cornerwise: ${MAIN} is missing. Build the library: npm run build -w lib`);
    return false;
  }
  if (existsSync(join(KNOWLEDGE, "manifest.json")) && isOld(RELEASE, KNOWLEDGE, ".json")) {
    const bundle = spawnSync(process.execPath, [join(LIB, "scripts", "bundle-release.mjs")], {
      encoding: "utf8",
    });
    if (bundle.status !== 0) say(bundle.stderr.trim());
  }
  return true;
}

function isOld(made, from, suffix) {
  if (!existsSync(made)) return true;
  const made_ms = statSync(made).mtimeMs;
  return readdirSync(from, { withFileTypes: true }).some((entry) => newer(from, entry, suffix, made_ms));
}

function newer(folder, entry, suffix, than) {
  if (SKIPPED.has(entry.name)) return false;
  const path = join(folder, entry.name);
  if (!entry.isDirectory()) return entry.name.endsWith(suffix) && statSync(path).mtimeMs > than;
  // A removed or renamed file shows in the time of its folder.
  if (statSync(path).mtimeMs > than) return true;
  return readdirSync(path, { withFileTypes: true }).some((inner) => newer(path, inner, suffix, than));
}

function compile() {
  const require = createRequire(import.meta.url);
  let tsc;
  try {
    const manifest = require.resolve("typescript/package.json");
    tsc = join(dirname(manifest), JSON.parse(readFileSync(manifest, "utf8")).bin.tsc);
  } catch {
    return "The TypeScript compiler is not installed: run npm ci in the repository.";
  }
  const aside = join(LIB, "node_modules", `.cornerwise-${process.pid}`);
  const made = join(aside, "dist");
  const run = spawnSync(
    process.execPath,
    [tsc, "-p", join(LIB, "tsconfig.json"), "--noCheck", "--outDir", made],
    { cwd: LIB, encoding: "utf8" },
  );
  try {
    if (run.status !== 0) return `The compiler said:\n${run.stdout}${run.stderr}`;
    putInPlace(made, join(LIB, "dist"));
    return undefined;
  } finally {
    rmSync(aside, { recursive: true, force: true });
  }
}
