/** A PostgreSQL server that is only there for tests and measurements. */
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

/**
 * Makes a cluster with the programs of `bin` and starts it on a free port of this machine: in a temporary folder, or in
 * the folder `kept`, where it goes on with the data that an earlier run left there.
 */
export function startPostgres(bin: string, kept?: string): Promise<PostgresServer>;
