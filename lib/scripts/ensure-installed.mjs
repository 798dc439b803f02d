// Node and node_modules, before anything else is loaded: only Node's own modules are imported here.
import { spawnSync } from "node:child_process";
import { existsSync, statSync } from "node:fs";
import { join } from "node:path";

const OLDEST_NODE = [20, 19];

/** npm writes the lock file and its own copy of it in one go, in no promised order. */
const SLACK_MS = 10_000;

/** What is wrong with this Node, with the remedy; undefined when it will do. */
export function nodeProblem(version = process.versions.node) {
  const [major = 0, minor = 0] = version.split(".").map(Number);
  const [wantedMajor, wantedMinor] = OLDEST_NODE;
  if (major > wantedMajor || (major === wantedMajor && minor >= wantedMinor)) return undefined;
  return `Cornerwise needs Node ${OLDEST_NODE.join(".")} or newer; this is Node ${version}. Install the current LTS release of Node and run the command again.`;
}

/** How npm is called from here: the npm that runs this script, else the one on the PATH. */
export function npm(args, options = {}) {
  const { npm_execpath: running } = process.env;
  return running !== undefined && /npm-cli\.c?js$/.test(running)
    ? spawnSync(process.execPath, [running, ...args], { stdio: "inherit", ...options })
    : spawnSync("npm", args, { stdio: "inherit", shell: process.platform === "win32", ...options });
}

/** Whether node_modules is missing, unfinished or older than the lock file. */
export function needsInstall(root) {
  const written = join(root, "node_modules", ".package-lock.json");
  if (!existsSync(written)) return true;
  return statSync(join(root, "package-lock.json")).mtimeMs > statSync(written).mtimeMs + SLACK_MS;
}

/** Installs what the lock file names when it is not there; returns whether it is there now. */
export function ensureInstalled(root, say) {
  if (!needsInstall(root)) return true;
  say("Installing what the lock file names (npm ci) ...");
  const run = npm(["ci", "--include=dev", "--no-audit", "--no-fund"], { cwd: root });
  if (run.status === 0) return true;
  say("npm ci failed: its message stands above. Without a network, npm needs a filled cache.");
  return false;
}
