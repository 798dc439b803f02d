/** What to do when there is no PostgreSQL server. */
export const POSTGRES_ADVICE: string;

/** The folder that holds initdb and postgres: from the PATH, else Debian's newest; undefined when there is none. */
export function findPostgres(): string | undefined;

/** The folder of the programs, installing Debian's package when there are none. Errors with the remedy when that fails. */
export function ensurePostgres(): string;
