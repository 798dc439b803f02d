// `npm start`: from a fresh clone to the running app in one command.
import { spawn } from "node:child_process";
import { existsSync, statSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { ensureBuilt } from "./ensure-built.mjs";
import { ensureInstalled, nodeProblem, npm } from "./ensure-installed.mjs";
import { addressesOf, boundTo } from "./bound-to.mjs";
import { freePort } from "./free-port.mjs";
import { newestChange } from "./newest-change.mjs";

const ROOT = dirname(dirname(dirname(fileURLToPath(import.meta.url))));
const HOST = process.env.HOST || "127.0.0.1";
const SERVER = join(ROOT, "lib", "scripts", "serve.mjs");
/** What the app is built from. */
const SOURCES = [
  "app",
  "lib",
  "knowledge",
  "public",
  "instrumentation-client.ts",
  "instrumentation.ts",
  "next.config.ts",
  "package-lock.json",
  "tsconfig.json",
];

const say = (line) => process.stdout.write(`${line}\n`);
const env = { ...process.env, NEXT_TELEMETRY_DISABLED: "1" };

const ON_NETWORK =
  "Others on the network can reach it. What they send can be read on its way unless a relay with TLS stands before it (CORNERWISE_ORIGIN).";

function fail(message, code = 1) {
  process.stderr.write(`${message}\n`);
  process.exit(code);
}

function ensureApp() {
  const made = join(ROOT, ".next", "BUILD_ID");
  if (existsSync(made) && statSync(made).mtimeMs >= newestChange(ROOT, SOURCES)) return true;
  say("Building the app (about half a minute) ...");
  return npm(["run", "build"], { cwd: ROOT, env }).status === 0;
}

function wantedPort() {
  const text = process.env.PORT || "3000";
  const port = Number(text);
  if (!Number.isInteger(port) || port < 1 || port > 65_535) {
    fail(`PORT is "${text}": give a number from 1 to 65535, or leave it out.`);
  }
  return port;
}

async function isUp(url, server) {
  for (let tries = 0; tries < 240 && server.exitCode === null; tries++) {
    try {
      await fetch(url, { method: "HEAD" });
      return true;
    } catch {
      await new Promise((resolve) => setTimeout(resolve, 250));
    }
  }
  return false;
}

const problem = nodeProblem();
if (problem !== undefined) fail(problem);
const wanted = wantedPort();
if (!ensureInstalled(ROOT, say)) fail("Cornerwise cannot start without its packages.");
if (!ensureApp()) fail("Cornerwise cannot start: the app could not be built; the reason stands above.");
if (!ensureBuilt(say)) fail("Cornerwise cannot start: the library could not be built.");

const port = await freePort(wanted, HOST);
if (port !== wanted) say(`Port ${wanted} is taken.`);
// Node itself, not npx: the signal then reaches the server and not a wrapper.
const server = spawn(process.execPath, [SERVER], {
  cwd: ROOT,
  stdio: ["ignore", "ignore", "inherit"],
  env: { ...env, HOST, PORT: String(port) },
});
for (const signal of ["SIGINT", "SIGTERM", "SIGHUP"]) process.on(signal, () => server.kill(signal));
server.on("exit", (code, signal) => process.exit(signal === null ? (code ?? 1) : 0));

const addresses = addressesOf(HOST, port);
if (await isUp(addresses[0], server)) {
  say(`\nCornerwise runs at ${addresses.join(" and ")}`);
  if (boundTo(HOST) === "network") say(ON_NETWORK);
  say("Invented demonstration cases are there from the start. Stop it with Ctrl+C.");
} else fail("The app did not answer; its messages stand above.");
