import type {
  CompiledQuery,
  DatabaseConnection,
  Driver,
  QueryCompiler,
  QueryResult,
  TransactionSettings,
} from "kysely";

/** Turns what a database throws into a StoreProblem where it is an expected failure. */
export type Translate = (error: unknown) => unknown;

/** A connection whose failures are translated; the driver below knows only the inner one. */
class TranslatingConnection implements DatabaseConnection {
  readonly inner: DatabaseConnection;
  readonly #translate: Translate;

  constructor(inner: DatabaseConnection, translate: Translate) {
    this.inner = inner;
    this.#translate = translate;
  }

  async executeQuery<R>(query: CompiledQuery): Promise<QueryResult<R>> {
    try {
      return await this.inner.executeQuery<R>(query);
    } catch (error) {
      throw this.#translate(error);
    }
  }

  async *streamQuery<R>(query: CompiledQuery, chunkSize?: number): AsyncIterableIterator<QueryResult<R>> {
    try {
      yield* this.inner.streamQuery<R>(query, chunkSize);
    } catch (error) {
      throw this.#translate(error);
    }
  }
}

const innerOf = (connection: DatabaseConnection): DatabaseConnection =>
  connection instanceof TranslatingConnection ? connection.inner : connection;

/** A driver whose failures are translated, whoever uses it. */
export class TranslatingDriver implements Driver {
  readonly #inner: Driver;
  readonly #translate: Translate;

  constructor(inner: Driver, translate: Translate) {
    this.#inner = inner;
    this.#translate = translate;
  }

  async #guard<T>(run: () => Promise<T>): Promise<T> {
    try {
      return await run();
    } catch (error) {
      throw this.#translate(error);
    }
  }

  init(): Promise<void> {
    return this.#guard(() => this.#inner.init());
  }

  async acquireConnection(): Promise<DatabaseConnection> {
    const connection = await this.#guard(() => this.#inner.acquireConnection());
    return new TranslatingConnection(connection, this.#translate);
  }

  beginTransaction(connection: DatabaseConnection, settings: TransactionSettings): Promise<void> {
    return this.#guard(() => this.#inner.beginTransaction(innerOf(connection), settings));
  }

  commitTransaction(connection: DatabaseConnection): Promise<void> {
    return this.#guard(() => this.#inner.commitTransaction(innerOf(connection)));
  }

  async rollbackTransaction(connection: DatabaseConnection): Promise<void> {
    try {
      await this.#inner.rollbackTransaction(innerOf(connection));
    } catch {
      // A failed write or a lost connection has rolled back already; the first error is the one to tell.
    }
  }

  async savepoint(
    connection: DatabaseConnection,
    name: string,
    compile: QueryCompiler["compileQuery"],
  ): Promise<void> {
    await this.#guard(async () => this.#inner.savepoint?.(innerOf(connection), name, compile));
  }

  async rollbackToSavepoint(
    connection: DatabaseConnection,
    name: string,
    compile: QueryCompiler["compileQuery"],
  ): Promise<void> {
    await this.#guard(async () => this.#inner.rollbackToSavepoint?.(innerOf(connection), name, compile));
  }

  async releaseSavepoint(
    connection: DatabaseConnection,
    name: string,
    compile: QueryCompiler["compileQuery"],
  ): Promise<void> {
    await this.#guard(async () => this.#inner.releaseSavepoint?.(innerOf(connection), name, compile));
  }

  releaseConnection(connection: DatabaseConnection): Promise<void> {
    return this.#inner.releaseConnection(innerOf(connection));
  }

  destroy(): Promise<void> {
    return this.#inner.destroy();
  }
}
