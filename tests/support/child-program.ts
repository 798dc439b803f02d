import { type ChildProcessByStdio, spawn } from "node:child_process";
import { mkdirSync } from "node:fs";
import { basename, join } from "node:path";
import type { Readable } from "node:stream";
import { buildSync } from "esbuild";

const ROOT = join(import.meta.dirname, "../..");
/** Inside the project, so that the packages are found. */
const MADE = join(ROOT, "reports", "programs");

/** A program of tests/support/programs as something that Node runs; gives its path. */
export function buildProgram(name: string): string {
  mkdirSync(MADE, { recursive: true });
  const outfile = join(MADE, `${basename(name, ".ts")}-${process.pid}.mjs`);
  buildSync({
    entryPoints: [join(import.meta.dirname, "programs", name)],
    outfile,
    bundle: true,
    // In one file it starts in half the time. What is a binary, or is only asked for, stays outside.
    external: ["libsql", "pg-native"],
    banner: {
      js: 'import { createRequire } from "node:module"; const require = createRequire(import.meta.url);',
    },
    minify: true,
    platform: "node",
    format: "esm",
    target: "node20",
    logLevel: "silent",
  });
  return outfile;
}

export type Program = ChildProcessByStdio<null, Readable, Readable>;

/** Starts such a program. */
export function startProgram(path: string, args: readonly string[]): Program {
  return spawn(process.execPath, [path, ...args], { cwd: ROOT, stdio: ["ignore", "pipe", "pipe"] });
}

/** What a program wrote, line by line, and how it ended. */
export interface Ended {
  readonly lines: readonly string[];
  readonly errors: string;
  /** Null when a signal ended it. */
  readonly code: number | null;
}

/** Waits until a program has ended. */
export async function endOf(program: Program): Promise<Ended> {
  let out = "";
  let errors = "";
  program.stdout.setEncoding("utf8").on("data", (text: string) => {
    out += text;
  });
  program.stderr.setEncoding("utf8").on("data", (text: string) => {
    errors += text;
  });
  const code = await new Promise<number | null>((resolve) => {
    program.on("close", resolve);
  });
  // A line that was cut off by a kill was not acknowledged.
  return { lines: out.split("\n").slice(0, -1), errors, code };
}
