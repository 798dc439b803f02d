// Prints how fast Cornerwise works. Each section is a TypeScript function that returns text; it is bundled first,
// as the browser would get it, so that no loader stands between the clock and the code.
import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { parseArgs } from "node:util";
import { build } from "vite";

/**
 * Title, file in this folder, exported function. Run some only: `npm run bench -- core`. Those that take long run only when
 * named: `npm run bench -- policies --cars 400`; `simulation` names them all. `policies` and `reliability` go on where an
 * earlier run stopped, and with `--write` pack what was played into tests/bench/slices. `reach` also takes
 * `--faults a,b --each 40`, `--from-seed 7000000` for other cases than the ones that the knowledge was mended with, `--lately`
 * to draw what happened to the car lately, and `--write` to keep its figures in knowledge/measured. `load` takes `--seconds 30`,
 * `--cases 100000` and `--only embedded` or `postgres`; the databases that it fills are kept in the temporary folder.
 */
const sections = [
  {
    title: "One more answer on the shipped knowledge: weigh and choose the next check",
    file: "shipped.bench.ts",
    run: "shippedKnowledgeStep",
  },
  { title: "Reading an owner's words", file: "shipped.bench.ts", run: "readingText" },
  {
    title: "In the browser: one answer, with the CPU as it is and slowed 6 times",
    file: "browser.bench.ts",
    run: "inTheBrowser",
    named: true,
  },
  {
    title: "Load: 200 people working cases at once on the server, among 100,000 stored ones",
    file: "load.bench.ts",
    run: "loadOfServer",
    named: true,
  },
  {
    title: "Overview: pages of the list of cases, beside a plain select of the same rows",
    file: "overview.bench.ts",
    run: "overviewPages",
    named: true,
  },
  {
    title: "Doubt: steadiness and misfit of one case",
    file: "doubt.bench.ts",
    run: "doubtTimes",
  },
  {
    title: "Drawing an exercise of a wanted topic and difficulty",
    file: "drawing.bench.ts",
    run: "drawingExercises",
    named: true,
  },
  {
    title: "Growth: the knowledge at 1, 10 and 100 times its size",
    file: "growth.bench.ts",
    run: "growthWithKnowledge",
  },
  {
    title: "One answer: explain the complaint and rate 120 checks (150 suspects, 300 findings)",
    file: "core.bench.ts",
    run: "wholeStep",
  },
  {
    title: "All marginals of a small network, beside a general-purpose library",
    file: "core.bench.ts",
    run: "besideGeneralLibrary",
  },
  {
    title: "Many present findings on the shipped knowledge",
    file: "many-findings.bench.ts",
    run: "manyFindings",
  },
  {
    title: "Worst case: 150 suspects, findings with 35 to 60 parents and no locality",
    file: "core.bench.ts",
    run: "withoutLocality",
  },
  {
    title: "Simulation: every policy on the shipped knowledge",
    file: "policies.bench.ts",
    run: "comparePolicies",
    worker: "simulation.worker.ts",
  },
  {
    title: "Simulation: the shipped policy against the exact optimum",
    file: "optimum.bench.ts",
    run: "againstTheOptimum",
    worker: "simulation.worker.ts",
  },
  {
    title: "Simulation: calibration",
    file: "calibration.bench.ts",
    run: "reliability",
    worker: "simulation.worker.ts",
  },
  {
    title: "Simulation: is an answer that was turned round named?",
    file: "doubt.bench.ts",
    run: "misreadAnswers",
    worker: "simulation.worker.ts",
  },
  {
    title: "Simulation: is every fault reached?",
    file: "reach.bench.ts",
    run: "reachability",
    worker: "simulation.worker.ts",
  },
];

sections.push({
  title: "What a desk would say of 25 solved complaints, and how long to book",
  file: "field-advice.bench.ts",
  run: "fieldAdvice",
  named: true,
});

const { values: options, positionals: wanted } = parseArgs({
  options: {
    cars: { type: "string" },
    faults: { type: "string" },
    each: { type: "string" },
    "from-seed": { type: "string" },
    lately: { type: "boolean" },
    write: { type: "boolean" },
    cases: { type: "string" },
    seconds: { type: "string" },
    only: { type: "string" },
  },
  allowPositionals: true,
});
const cars = options.cars === undefined ? undefined : Number(options.cars);
if (cars !== undefined && !(Number.isInteger(cars) && cars > 0)) {
  console.error("--cars takes a whole number above 0.");
  process.exit(1);
}
const each = options.each === undefined ? undefined : Number(options.each);
if (each !== undefined && !(Number.isInteger(each) && each > 0)) {
  console.error("--each takes a whole number above 0.");
  process.exit(1);
}
const fromSeed = options["from-seed"] === undefined ? undefined : Number(options["from-seed"]);
if (fromSeed !== undefined && !(Number.isSafeInteger(fromSeed) && fromSeed >= 0)) {
  console.error("--from-seed takes a whole number, 0 or more.");
  process.exit(1);
}
const [cases, seconds] = ["cases", "seconds"].map((name) => {
  const number = options[name] === undefined ? undefined : Number(options[name]);
  if (number === undefined || (Number.isInteger(number) && number > 0)) return number;
  console.error(`--${name} takes a whole number above 0.`);
  process.exit(1);
});
const faults = options.faults?.split(",");
const chosen = sections.filter(({ title, file, run, worker, named }) =>
  wanted.length === 0
    ? worker === undefined && named === undefined
    : wanted.some((word) => `${title} ${file} ${run}`.toLowerCase().includes(word.toLowerCase())),
);
if (chosen.length === 0) {
  console.error(
    `No section matches ${wanted.join(" ")}; there are: ${sections.map(({ run }) => run).join(", ")}.`,
  );
  process.exit(1);
}

const root = join(import.meta.dirname, "..", "..");
const write = options.write === true ? root : undefined;
const outDir = join(root, "reports", "bench");
mkdirSync(outDir, { recursive: true });
await build({
  root,
  configFile: false,
  logLevel: "warn",
  // Bundled as well: Node cannot name the exports of CommonJS packages. Not those that bring a binary.
  ssr: { noExternal: true, external: ["@playwright/test", "libsql", "@node-rs/argon2", "pg", "kysely"] },
  build: {
    ssr: true,
    outDir,
    emptyOutDir: true,
    target: "node20",
    rollupOptions: {
      input: [
        ...new Set(
          chosen
            .flatMap(({ file, worker }) => (worker === undefined ? [file] : [file, worker]))
            .map((file) => join(import.meta.dirname, file)),
        ),
      ],
      output: { entryFileNames: "[name].mjs", chunkFileNames: "[name]-[hash].mjs" },
    },
  },
});
for (const { title, file, run } of chosen) {
  const module = await import(pathToFileURL(join(outDir, file.replace(/\.ts$/, ".mjs"))).href);
  const asked = { cars, faults, each, fromSeed, lately: options.lately, write, root, cases, seconds };
  if (options.only !== undefined) asked.only = options.only;
  console.log(`\n${title}\n${await module[run](asked)}`);
}
