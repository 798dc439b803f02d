// A PostgreSQL server of our own: a cluster to throw away, or one that is kept, on a free port of this machine only.
import { spawn, spawnSync } from "node:child_process";
import { randomBytes } from "node:crypto";
import {
  chownSync,
  closeSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  openSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import pg from "pg";
import { freePort } from "../../lib/scripts/free-port.mjs";

const HOST = "127.0.0.1";
const USER = "shop";
const STARTS_WITHIN = 30_000;
/** Stops the server as it is told; also when nobody is left to tell, so that killed tests leave none running. */
const KEEPER = `"$@" & server=$!
read -r how
if [ "$how" = fast ]; then kill -INT $server; else kill -QUIT $server; fi
wait $server`;

/** PostgreSQL refuses to run as root: then it runs as a user that owns nothing else of ours. */
function otherUser() {
  if (process.getuid?.() !== 0) return {};
  for (const name of ["postgres", "nobody"]) {
    const [uid, gid] = ["-u", "-g"].map((flag) =>
      Number.parseInt(spawnSync("id", [flag, name], { encoding: "utf8" }).stdout, 10),
    );
    if (Number.isInteger(uid) && Number.isInteger(gid)) return { uid, gid };
  }
  throw new Error("PostgreSQL does not run as root, and there is no user postgres or nobody to run it as.");
}

async function answers(url, server, log) {
  const until = Date.now() + STARTS_WITHIN;
  while (Date.now() < until && server.exitCode === null) {
    const client = new pg.Client({ connectionString: url, connectionTimeoutMillis: 2000 });
    client.on("error", () => undefined);
    try {
      await client.connect();
      await client.end();
      return;
    } catch {
      await sleep(50);
    }
  }
  throw new Error(`The PostgreSQL server did not start:\n${readFileSync(log, "utf8")}`);
}

/** Makes the cluster's data, and the password that is needed to reach it. */
function makeCluster(bin, folder, user) {
  const [data, log, passwordFile] = ["data", "log", "password"].map((name) => join(folder, name));
  rmSync(data, { recursive: true, force: true });
  writeFileSync(passwordFile, randomBytes(16).toString("hex"));
  writeFileSync(log, "");
  if (user.uid !== undefined)
    for (const path of [folder, passwordFile, log]) chownSync(path, user.uid, user.gid);
  const made = spawnSync(
    join(bin, "initdb"),
    ["-D", data, "-U", USER, "-E", "UTF8", "--locale=C", "-A", "scram-sha-256", `--pwfile=${passwordFile}`],
    { ...user, cwd: folder, encoding: "utf8" },
  );
  if (made.status !== 0) throw new Error(`initdb failed: ${made.stderr || made.error}`);
}

/** Starts a cluster with the programs of `bin`; see the declarations for what it takes and gives. */
export async function startPostgres(bin, kept) {
  const user = otherUser();
  const folder = kept ?? mkdtempSync(join(tmpdir(), "cornerwise-postgres-"));
  const [data, log, passwordFile, whole] = ["data", "log", "password", "whole"].map((name) =>
    join(folder, name),
  );
  if (kept !== undefined) mkdirSync(folder, { recursive: true });
  if (!existsSync(whole)) {
    makeCluster(bin, folder, user);
    writeFileSync(whole, "");
  }
  const password = readFileSync(passwordFile, "utf8");

  // One process starts where another one did: two runs at once then look for a port in different places.
  const port = await freePort(20_000 + (process.pid % 20_000), HOST);
  const url = (database) => `postgres://${USER}:${password}@${HOST}:${port}/${database}`;
  let server;
  const start = async () => {
    const out = openSync(log, "a");
    // Many test files at once on a machine of many cores, each with several instances of the app.
    const settings = [
      "listen_addresses=127.0.0.1",
      "unix_socket_directories=",
      "max_connections=400",
      `port=${port}`,
    ];
    const program = [join(bin, "postgres"), "-D", data, ...settings.flatMap((one) => ["-c", one])];
    server = spawn("sh", ["-c", KEEPER, "keeper", ...program], {
      ...user,
      cwd: folder,
      stdio: ["pipe", out, out],
    });
    closeSync(out);
    await answers(url("postgres"), server, log);
  };
  const stop = async (how = "fast") => {
    if (server.exitCode !== null || server.signalCode !== null) return;
    const gone = new Promise((resolve) => server.once("exit", resolve));
    server.stdin.end(`${how}\n`);
    await gone;
  };
  await start();
  return {
    url,
    folder,
    start,
    stop,
    async createDatabase(name) {
      const client = new pg.Client({ connectionString: url("postgres") });
      await client.connect();
      await client.query(`create database ${client.escapeIdentifier(name)}`);
      await client.end();
      return url(name);
    },
    async clear() {
      await stop("immediate");
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
