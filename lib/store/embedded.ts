import { accessSync, constants, existsSync, mkdirSync } from "node:fs";
import { dirname, resolve } from "node:path";
import {
  CompiledQuery,
  type DatabaseConnection,
  type DialectAdapter,
  type Driver,
  SqliteAdapter,
  type SqliteDatabase,
  SqliteDialect,
  type SqliteDialectConfig,
  SqliteDriver,
} from "kysely";
import Database from "libsql";
import { embeddedProblem } from "./embedded-problem.ts";
import { StoreProblem } from "./problem.ts";
import { TranslatingDriver } from "./translating-driver.ts";

/** How long a write waits for one of another process, in milliseconds. */
const BUSY_TIMEOUT = 5000;

/**
 * What makes an acknowledged write stay: a log that is written ahead and flushed at every commit.
 *
 * `secure_delete`: what is removed for privacy is overwritten, not just unlinked.
 */
const PRAGMAS = ["synchronous = FULL", "foreign_keys = ON", "secure_delete = ON"];

/** Takes the write lock at once: a transaction that reads first and writes later could not get it any more. */
class ImmediateDriver extends SqliteDriver {
  override async beginTransaction(connection: DatabaseConnection): Promise<void> {
    await connection.executeQuery(CompiledQuery.raw("begin immediate"));
  }
}

/** SQLite changes its tables in transactions; the library says no for databases at large. */
class TransactionalAdapter extends SqliteAdapter {
  override get supportsTransactionalDdl(): boolean {
    return true;
  }
}

class EmbeddedDialect extends SqliteDialect {
  readonly #config: SqliteDialectConfig;
  readonly #path: string;

  constructor(database: SqliteDatabase, path: string) {
    super({ database });
    this.#config = { database };
    this.#path = path;
  }

  override createAdapter(): DialectAdapter {
    return new TransactionalAdapter();
  }

  override createDriver(): Driver {
    return new TranslatingDriver(new ImmediateDriver(this.#config), (error) =>
      embeddedProblem(error, this.#path),
    );
  }
}

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

function asSqliteDatabase(database: Database.Database): SqliteDatabase {
  return {
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
export function embeddedDialect(file: string): SqliteDialect {
  const path = file === ":memory:" ? file : resolve(file);
  try {
    if (path !== ":memory:") prepareFolder(path);
    const database = new Database(path, { timeout: BUSY_TIMEOUT });
    const [mode] = database.prepare("pragma journal_mode = WAL").all([]) as { journal_mode: string }[];
    if (path !== ":memory:" && mode?.journal_mode !== "wal") {
      throw new StoreProblem(
        "cannot-open",
        `The database ${path} cannot keep a write-ahead log there. Keep it on a disk of this machine, not on a network share.`,
      );
    }
    for (const pragma of PRAGMAS) database.prepare(`pragma ${pragma}`).all([]);
    return new EmbeddedDialect(asSqliteDatabase(database), path);
  } catch (error) {
    throw embeddedProblem(error, path);
  }
}
