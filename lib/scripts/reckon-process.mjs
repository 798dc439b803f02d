// Starts the process that reckons how urgent the open cases are, and starts it again when it fails.
import { fork } from "node:child_process";
import { existsSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const HERE = dirname(fileURLToPath(import.meta.url));
const AGAIN_MS = 10_000;

/** Returns how to end it. Requests never wait for it: a process of its own, of low priority. */
export function startReckoning(root) {
  if (!existsSync(join(HERE, "..", "dist", "cli", "reckon-beside.js"))) {
    process.stderr.write(
      "The library is not built, so the urgency of cases is not reckoned: npm run build.\n",
    );
    return () => undefined;
  }
  let child;
  let again;
  let ended = false;
  const start = () => {
    child = fork(join(HERE, "reckon.mjs"), { cwd: root, stdio: ["ignore", "ignore", "inherit", "ipc"] });
    child.on("error", () => undefined);
    child.on("exit", () => {
      if (!ended) again = setTimeout(start, AGAIN_MS).unref();
    });
    // The server does not stay up for its sake.
    child.unref();
    child.channel?.unref();
  };
  start();
  return () => {
    ended = true;
    clearTimeout(again);
    child.kill();
  };
}
