import { createHash } from "node:crypto";
import {
  appendFileSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { dirname, join } from "node:path";
import { gunzipSync, gzipSync } from "node:zlib";

/** Plays jobs; `played` is called with each result as it comes, `before` of `all` were played at another time. */
export type PlayJobs<Result> = (
  jobs: readonly unknown[],
  progress: { readonly before: number; readonly played: (at: number, result: Result) => void },
) => Promise<Result[]>;

/** Where the slices of a long run are kept. */
export interface SliceFiles {
  /** Grows with every slice that is played; one line of JSON each. */
  readonly growing: string;
  /** All slices packed, for the repository. */
  readonly packed: string;
}

/**
 * Files of a run: named by what is played and by a digest of all that its results follow from, so that those of another
 * knowledge are never taken for its own.
 */
export function sliceFiles(root: string, name: string, from: unknown): SliceFiles {
  const digest = createHash("sha256").update(JSON.stringify(from)).digest("hex").slice(0, 12);
  return {
    growing: join(root, "reports", "slices", `${name}-${digest}.ndjson`),
    packed: join(root, "tests", "bench", "slices", `${name}-${digest}.ndjson.gz`),
  };
}

/**
 * Results of all jobs, in their order. Those that lie in the files are not played again, so a run goes on where it stopped.
 *
 * The first slice kept is played once more: when it comes out otherwise the program is another one, what was kept is laid
 * aside and everything is played.
 */
export async function resumed<Result>(
  files: SliceFiles,
  jobs: readonly unknown[],
  play: PlayJobs<Result>,
  say: (line: string) => void,
): Promise<Result[]> {
  const kept = readSlices<Result>(files);
  const known = jobs.filter((job) => kept.has(JSON.stringify(job)));
  const [probe] = known;
  if (probe !== undefined) {
    const [again] = await play([probe], { before: 0, played: () => undefined });
    if (JSON.stringify(again) !== JSON.stringify(kept.get(JSON.stringify(probe)))) {
      say("The slices kept were played by another state of the program: laid aside, all are played again.");
      kept.clear();
      layAside(files);
    } else say(`${known.length} of ${jobs.length} slices were played before.`);
  }
  const missing = jobs.filter((job) => !kept.has(JSON.stringify(job)));
  mkdirSync(dirname(files.growing), { recursive: true });
  // A line that was cut off must not swallow the next one.
  if (existsSync(files.growing)) appendFileSync(files.growing, "\n");
  await play(missing, {
    before: jobs.length - missing.length,
    played: (at, result) => {
      const job = missing[at];
      kept.set(JSON.stringify(job), result);
      appendFileSync(files.growing, `${JSON.stringify({ job, result })}\n`);
    },
  });
  return jobs.map((job) => kept.get(JSON.stringify(job)) as Result);
}

/** Packs all slices into the file for the repository; those of the same run on an older knowledge go. */
export function packSlices(files: SliceFiles): void {
  const lines = [...readSlices(files)].map(
    ([job, result]) => `{"job":${job},"result":${JSON.stringify(result)}}\n`,
  );
  const folder = dirname(files.packed);
  mkdirSync(folder, { recursive: true });
  const run = nameOf(files.packed);
  for (const name of readdirSync(folder)) if (nameOf(name) === run) rmSync(join(folder, name));
  writeFileSync(files.packed, gzipSync(lines.sort().join(""), { level: 9 }));
}

function nameOf(file: string): string {
  return file.replace(/^.*\//, "").replace(/-[0-9a-f]{12}\.ndjson\.gz$/, "");
}

/** Results by their job; a line that was cut off when a run was stopped counts as not played. */
function readSlices<Result>({ packed, growing }: SliceFiles): Map<string, Result> {
  const slices = new Map<string, Result>();
  const texts = [
    existsSync(packed) ? gunzipSync(readFileSync(packed)).toString("utf8") : "",
    existsSync(growing) ? readFileSync(growing, "utf8") : "",
  ];
  for (const line of texts.flatMap((text) => text.split("\n"))) {
    if (line === "") continue;
    try {
      const { job, result } = JSON.parse(line) as { job: unknown; result: Result };
      slices.set(JSON.stringify(job), result);
    } catch {
      // Cut off in the middle.
    }
  }
  return slices;
}

function layAside({ packed, growing }: SliceFiles): void {
  for (const file of [packed, growing]) if (existsSync(file)) renameSync(file, `${file}.other-program`);
}
