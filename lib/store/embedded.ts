import { accessSync, constants, existsSync, mkdirSync } from "node:fs";
import { dirname, resolve } from "node:path";
import Database from "libsql";
import { EmbeddedDialect, type EmbeddedDatabase, WAIT_FOR_WRITER } from "./embedded-driver.ts";
import { embeddedProblem } from "./embedded-problem.ts";
import { StoreProblem } from "./problem.ts";

/**
 * What makes an acknowledged write stay: a log that is written ahead and flushed at every commit.
 *
 * `secure_delete`: what is removed for privacy is overwritten, not just unlinked. `busy_timeout`: the driver waits itself.
 */
const PRAGMAS = ["synchronous = FULL", "foreign_keys = ON", "secure_delete = ON", "busy_timeout = 0"];

/** The driver below stops the whole process on a value that it cannot bind, so none may reach it. */
function bindable(value: unknown): unknown {
  if (typeof value === "boolean") return value ? 1 : 0;
  if (value === undefined) return null;
  if (value instanceof Date) return value.toISOString();
  const fits =
    value === null || ["string", "number", "bigint"].includes(typeof value) || value instanceof Uint8Array;
  if (!fits) throw new TypeError(`The database cannot hold a value of type ${typeof value}.`);
  return value;
}

function asEmbeddedDatabase(database: Database.Database): EmbeddedDatabase {
  return {
    get inTransaction() {
      return database.inTransaction;
    },
    exec: (sql) => {
      database.exec(sql);
    },
    close: () => {
      database.close();
    },
    prepare(sql) {
      const statement = database.prepare(sql);
      return {
        reader: statement.reader,
        all: (values) => statement.all(values.map(bindable)),
        run: (values) => statement.run(values.map(bindable)),
        iterate: (values) => statement.iterate(values.map(bindable)),
      };
    },
  };
}

/** Makes the folder, and asks for the right to write beforehand: the driver says only that it could not open the file. */
function prepareFolder(path: string): void {
  const folder = dirname(path);
  let there = folder;
  while (!existsSync(there)) there = dirname(there);
  accessSync(there, constants.W_OK);
  mkdirSync(folder, { recursive: true });
  if (existsSync(path)) accessSync(path, constants.W_OK);
}

/**
 * The dialect of an embedded database: one file, made with its folder when it is not there.
 *
 * Errors  StoreProblem cannot-open, read-only, not-a-database, busy.
 */
export function embeddedDialect(file: string): EmbeddedDialect {
  const path = file === ":memory:" ? file : resolve(file);
  try {
    if (path !== ":memory:") prepareFolder(path);
    const database = new Database(path, { timeout: WAIT_FOR_WRITER });
    const [mode] = database.prepare("pragma journal_mode = WAL").all([]) as { journal_mode: string }[];
    if (path !== ":memory:" && mode?.journal_mode !== "wal") {
      throw new StoreProblem(
        "cannot-open",
        `The database ${path} cannot keep a write-ahead log there. Keep it on a disk of this machine, not on a network share.`,
      );
    }
    for (const pragma of PRAGMAS) database.prepare(`pragma ${pragma}`).all([]);
    return new EmbeddedDialect(asEmbeddedDatabase(database), path);
  } catch (error) {
    throw embeddedProblem(error, path);
  }
}
