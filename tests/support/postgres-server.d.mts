/** A PostgreSQL server that is only there for tests. */
export interface PostgresServer {
  /** Address of one of its databases, password included. */
  readonly url: (database: string) => string;
  /** Where it keeps its data; belongs to the user that it runs as. */
  readonly folder: string;
  /** Starts it again with the data that it has. */
  readonly start: () => Promise<void>;
  /** Stops it: "fast" lets it write what it has, "immediate" breaks it off as a crash would. */
  readonly stop: (how?: "fast" | "immediate") => Promise<void>;
  /** An empty database of that name; gives its address. */
  readonly createDatabase: (name: string) => Promise<string>;
  /** Stops it and deletes its data. */
  readonly clear: () => Promise<void>;
}

/** Makes a cluster in a temporary folder with the programs of `bin` and starts it on a free port of this machine. */
export function startPostgres(bin: string): Promise<PostgresServer>;
