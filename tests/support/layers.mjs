// Checks the layers with dependency-cruiser, and that it really looked: `npm run layers`.
import { spawnSync } from "node:child_process";
import { existsSync, readdirSync } from "node:fs";
import { createRequire } from "node:module";
import { join, sep } from "node:path";
import { pathToFileURL } from "node:url";

const ROOT = join(import.meta.dirname, "../..");
const LOOKED_AT = ["lib", "app", "tests"];
const NOT_SOURCE = new Set(["node_modules", "dist", "release", ".next"]);
const WITHOUT_RULE = new Set(["cli", "scripts", "bin", "dist", "release", "node_modules"]);

function sourcesIn(folder) {
  return readdirSync(join(ROOT, folder), { withFileTypes: true }).flatMap((entry) => {
    if (NOT_SOURCE.has(entry.name)) return [];
    const path = join(folder, entry.name);
    if (entry.isDirectory()) return sourcesIn(path);
    return /\.tsx?$/.test(entry.name) && !entry.name.endsWith(".d.ts") ? [path.split(sep).join("/")] : [];
  });
}

/**
 * Every breach of the layers in a folder tree, in words.
 *
 * An empty cruise is a breach: with a TypeScript that it does not know, dependency-cruiser reports success on 0 modules.
 */
export function layerProblems(folders = LOOKED_AT) {
  const depcruise = join(ROOT, "node_modules/dependency-cruiser/bin/dependency-cruise.mjs");
  const run = spawnSync(
    process.execPath,
    [depcruise, "--config", ".dependency-cruiser.cjs", "--output-type", "json", ...folders],
    { cwd: ROOT, encoding: "utf8", maxBuffer: 1e8 },
  );
  let report;
  try {
    report = JSON.parse(run.stdout);
  } catch {
    return { problems: [`dependency-cruiser gave no report: ${run.stderr || run.stdout}`], modules: 0 };
  }
  const seen = new Set(report.modules.map((module) => module.source));
  const missed = folders.flatMap(sourcesIn).filter((path) => !seen.has(path));
  const followed = report.modules.reduce((sum, module) => sum + module.dependencies.length, 0);
  return {
    modules: report.modules.length,
    problems: [
      ...report.summary.violations.map(
        ({ rule, from, to }) =>
          `${rule.name}: ${from} imports ${to}. Move what is needed down, or pass it in.`,
      ),
      ...(seen.size === 0 || followed === 0
        ? ["no module or no import was looked at: is @swc/core installed?"]
        : []),
      ...missed.map((path) => `${path} was not looked at`),
      ...unknownLayers(),
    ],
  };
}

/** Folders of the library for which no rule says where they stand. */
function unknownLayers() {
  const config = createRequire(import.meta.url)(join(ROOT, ".dependency-cruiser.cjs"));
  const ruled = new Set(config.forbidden.map(({ name }) => /^lib-(.+)-looks-down-only$/.exec(name)?.[1]));
  return readdirSync(join(ROOT, "lib"), { withFileTypes: true })
    .filter((entry) => entry.isDirectory() && !WITHOUT_RULE.has(entry.name) && !ruled.has(entry.name))
    .map((entry) => `lib/${entry.name} has no place among the layers: add it to .dependency-cruiser.cjs`);
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const folders = LOOKED_AT.filter((folder) => existsSync(join(ROOT, folder)));
  const { problems, modules } = layerProblems(folders);
  for (const problem of problems) process.stderr.write(`${problem}\n`);
  process.stdout.write(`${modules} modules looked at, ${problems.length} problem(s)\n`);
  process.exitCode = problems.length === 0 ? 0 : 1;
}
