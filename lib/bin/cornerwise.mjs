#!/usr/bin/env node
// Runs the command line from dist/. In the repository, dist/ and the bundled release are made first when they are missing or old.
import { text } from "node:stream/consumers";
import { ensureBuilt } from "../scripts/ensure-built.mjs";

const built = ensureBuilt((line) => process.stderr.write(`${line}\n`));
if (built) {
  const { runCommandLine } = await import("../dist/cli/main.js");
  process.stdout.on("error", (error) => {
    // The reader went away (| head): nothing more to say.
    if (error.code === "EPIPE") process.exit(0);
    throw error;
  });
  process.exitCode = await runCommandLine(process.argv.slice(2), {
    stdin: () => (process.stdin.isTTY ? Promise.resolve("") : text(process.stdin)),
    stdout: (out) => process.stdout.write(out),
    stderr: (out) => process.stderr.write(out),
    cwd: process.cwd(),
  });
} else {
  process.exitCode = 3;
}
