import { type ChildProcess, spawn } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";

const ROOT = join(import.meta.dirname, "../..");

export interface OwnServer {
  /** Where it is found from this machine. */
  readonly url: string;
  readonly database: string;
  /** What it wrote on its console so far. */
  readonly said: () => string;
  /** Ends it as an operator would, or at once; gives its exit code. */
  readonly stop: (signal?: "SIGTERM" | "SIGKILL") => Promise<number | null>;
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer().on("error", reject);
    probe.listen(0, "127.0.0.1", () => {
      const address = probe.address();
      probe.close(() => resolve(address !== null && typeof address === "object" ? address.port : 0));
    });
  });
}

async function isUp(url: string, process: ChildProcess): Promise<boolean> {
  for (let tries = 0; tries < 120 && process.exitCode === null; tries++) {
    const answer = await fetch(`${url}/api/v1/health`).catch(() => undefined);
    if (answer !== undefined) return true;
    await new Promise((resolve) => {
      setTimeout(resolve, 250);
    });
  }
  return false;
}

/**
 * A server process of the test's own, on the built app, with a database of its own unless one is given.
 *
 * With `host` 0.0.0.0 it takes itself to be on the network: no data before the first account.
 */
export async function ownServer({
  host = "127.0.0.1",
  ...env
}: { readonly host?: string } & Readonly<Record<string, string>> = {}): Promise<OwnServer> {
  const port = await freePort();
  const own = mkdtempSync(join(tmpdir(), "cornerwise-own-server-"));
  const database = env.CORNERWISE_DATABASE ?? join(own, "cornerwise.db");
  let text = "";
  const server = spawn(process.execPath, [join(ROOT, "lib/scripts/serve.mjs")], {
    env: { ...process.env, ...env, CORNERWISE_DATABASE: database, HOST: host, PORT: String(port) },
    stdio: ["ignore", "ignore", "pipe"],
  });
  server.stderr.on("data", (chunk: Buffer) => {
    text += chunk.toString();
  });
  const ended = new Promise<number | null>((resolve) => {
    server.on("exit", resolve);
  });
  const stop = async (signal: "SIGTERM" | "SIGKILL" = "SIGTERM"): Promise<number | null> => {
    server.kill(signal);
    const code = await ended;
    if (dirname(database) === own) rmSync(own, { recursive: true, force: true });
    return code;
  };
  const url = `http://127.0.0.1:${port}`;
  if (await isUp(url, server)) return { url, database, said: () => text, stop };
  await stop("SIGKILL");
  throw new Error(`The server did not start: ${text}`);
}
