import { setTimeout as sleep } from "node:timers/promises";
import {
  type CompiledQuery,
  type DatabaseConnection,
  type DialectAdapter,
  type Driver,
  type QueryResult,
  SqliteAdapter,
  type SqliteDatabase,
  SqliteDialect,
  SqliteDriver,
  type TransactionSettings,
} from "kysely";
import { embeddedProblem } from "./embedded-problem.ts";
import { TranslatingDriver } from "./translating-driver.ts";

/** How long a statement waits for a writer of another connection, in milliseconds. */
export const WAIT_FOR_WRITER = 5000;
const LONGEST_PAUSE = 20;

/** A database of one file, as the driver sees it. */
export type EmbeddedDatabase = SqliteDatabase & {
  readonly inTransaction: boolean;
  readonly exec: (sql: string) => void;
};

const isBusy = (error: unknown): boolean =>
  error instanceof Error && "code" in error && String(error.code).startsWith("SQLITE_BUSY");

/**
 * Takes the write lock, waiting for other writers without holding up this process: SQLite's own waiting would stop
 * everything here, the transaction that is waited for included if it is one of this process.
 *
 * By `exec`, which clears its statement away: one that met a lock would go on holding what it had seen until then.
 */
async function takeWriteLock(database: EmbeddedDatabase): Promise<void> {
  const until = performance.now() + WAIT_FOR_WRITER;
  for (let pause = 1; ; pause = Math.min(2 * pause, LONGEST_PAUSE)) {
    try {
      database.exec("begin immediate");
      return;
    } catch (error) {
      if (!isBusy(error) || performance.now() > until) throw error;
    }
    await sleep(pause);
  }
}

/** Statements that may be run outside a transaction: reads, and raw ones, whose sender knows best. */
const ALONE: ReadonlySet<string> = new Set(["SelectQueryNode", "RawNode"]);

/** A connection on which a single write takes the lock like a transaction does. */
class LockingConnection implements DatabaseConnection {
  readonly #inner: DatabaseConnection;
  readonly #database: EmbeddedDatabase;

  constructor(inner: DatabaseConnection, database: EmbeddedDatabase) {
    this.#inner = inner;
    this.#database = database;
  }

  async executeQuery<R>(query: CompiledQuery): Promise<QueryResult<R>> {
    const database = this.#database;
    if (database.inTransaction || ALONE.has(query.query.kind)) return this.#inner.executeQuery<R>(query);
    await takeWriteLock(database);
    try {
      const result = await this.#inner.executeQuery<R>(query);
      database.exec("commit");
      return result;
    } catch (error) {
      if (database.inTransaction) database.exec("rollback");
      throw error;
    }
  }

  streamQuery<R>(query: CompiledQuery, chunkSize?: number): AsyncIterableIterator<QueryResult<R>> {
    return this.#inner.streamQuery<R>(query, chunkSize);
  }
}

class EmbeddedDriver extends SqliteDriver {
  readonly #database: EmbeddedDatabase;

  constructor(database: EmbeddedDatabase) {
    super({ database });
    this.#database = database;
  }

  override async acquireConnection(): Promise<DatabaseConnection> {
    return new LockingConnection(await super.acquireConnection(), this.#database);
  }

  /** With the write lock from the start: a transaction that reads first and writes later could not get it any more. */
  override async beginTransaction(
    _connection: DatabaseConnection,
    settings?: TransactionSettings,
  ): Promise<void> {
    if (settings?.accessMode === "read only") this.#database.exec("begin");
    else await takeWriteLock(this.#database);
  }

  override commitTransaction(): Promise<void> {
    this.#database.exec("commit");
    return Promise.resolve();
  }

  override rollbackTransaction(): Promise<void> {
    // SQLite rolls some failed writes back itself.
    if (this.#database.inTransaction) this.#database.exec("rollback");
    return Promise.resolve();
  }
}

/** SQLite changes its tables in transactions; the library says no for databases at large. */
class TransactionalAdapter extends SqliteAdapter {
  override get supportsTransactionalDdl(): boolean {
    return true;
  }
}

/** SQLite with transactions that several connections, of this and other processes, can hold one after the other. */
export class EmbeddedDialect extends SqliteDialect {
  readonly #database: EmbeddedDatabase;
  readonly #path: string;

  constructor(database: EmbeddedDatabase, path: string) {
    super({ database });
    this.#database = database;
    this.#path = path;
  }

  override createAdapter(): DialectAdapter {
    return new TransactionalAdapter();
  }

  override createDriver(): Driver {
    return new TranslatingDriver(new EmbeddedDriver(this.#database), (error) =>
      embeddedProblem(error, this.#path),
    );
  }
}
