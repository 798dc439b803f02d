import { type Kysely, Migrator } from "kysely";
import { MIGRATIONS } from "./migrations/index.ts";
import { StoreProblem } from "./problem.ts";
import type { StoreKind, Tables } from "./tables.ts";

/**
 * Brings the tables up to date: forwards, all in one transaction, one process at a time.
 *
 * Errors  StoreProblem newer-database: a newer version of the program wrote it; and whatever the database tells.
 */
export async function migrate(
  db: Kysely<Tables>,
  kind: StoreKind,
  steps: typeof MIGRATIONS = MIGRATIONS,
): Promise<void> {
  const migrations = Object.fromEntries(
    Object.entries(steps).map(([name, step]) => [
      name,
      { up: (inner: Kysely<unknown>) => step(inner, kind) },
    ]),
  );
  const migrator = new Migrator({ db, provider: { getMigrations: () => Promise.resolve(migrations) } });
  const { error } = await migrator.migrateToLatest();
  if (error === undefined) return;
  // The library tells this one in words only: a step was done that this version does not have.
  const unknown = /previously executed migration (\S+) is missing/.exec(
    error instanceof Error ? error.message : "",
  )?.[1];
  if (unknown === undefined) throw error;
  throw new StoreProblem(
    "newer-database",
    `The database was written by a newer version of the program (step ${unknown}). Update this one, or restore a backup into an empty database.`,
    { step: unknown },
    { cause: error },
  );
}
