// Where the programs of a PostgreSQL server are, installing them when there are none.
import { spawnSync } from "node:child_process";
import { existsSync, readdirSync, realpathSync } from "node:fs";
import { delimiter, dirname, join } from "node:path";

export const POSTGRES_ADVICE =
  "No PostgreSQL server was found. Install one (on Debian: apt-get install postgresql), or put the folder of its initdb on the PATH.";

const PROGRAMS = ["initdb", "postgres"];
const DEBIAN = "/usr/lib/postgresql";

const hasPrograms = (folder) => PROGRAMS.every((name) => existsSync(join(folder, name)));

/** The folder that holds initdb and postgres: from the PATH, else Debian's newest; undefined when there is none. */
export function findPostgres() {
  const onPath = (process.env.PATH ?? "").split(delimiter).filter(Boolean).find(hasPrograms);
  // Behind a link there is only this one program; what it needs lies beside the real one.
  if (onPath !== undefined) return dirname(realpathSync(join(onPath, "initdb")));
  if (!existsSync(DEBIAN)) return undefined;
  return readdirSync(DEBIAN)
    .sort((a, b) => Number(b) - Number(a))
    .map((version) => join(DEBIAN, version, "bin"))
    .find(hasPrograms);
}

function installPackage() {
  if (process.platform !== "linux" || process.getuid?.() !== 0) return;
  if (spawnSync("apt-get", ["--version"]).status !== 0) return;
  const env = { ...process.env, DEBIAN_FRONTEND: "noninteractive" };
  for (const args of [["update"], ["install", "-y", "--no-install-recommends", "postgresql"]]) {
    if (spawnSync("apt-get", args, { stdio: "inherit", env }).status !== 0) return;
  }
}

/** The folder of the programs, installing Debian's package when there are none. Errors with the remedy when that fails. */
export function ensurePostgres() {
  if (findPostgres() === undefined) installPackage();
  const found = findPostgres();
  if (found === undefined) throw new Error(POSTGRES_ADVICE);
  return found;
}
