import { Kysely } from "kysely";
import { embeddedDialect } from "./embedded.ts";
import { migrate } from "./migrate.ts";
import { postgresDialect } from "./postgres.ts";
import type { Store, StoreKind, Tables } from "./tables.ts";

/** Which of the two databases a path or address means. */
export function storeKind(database: string): StoreKind {
  return /^postgres(ql)?:\/\//.test(database) ? "postgres" : "embedded";
}

/**
 * Opens the database and brings its tables up to date.
 *
 * Shape   database: postgres://... for a PostgreSQL server, else the path of a file, made when it is not there.
 * Errors  StoreProblem cannot-open, read-only, not-a-database, newer-database, unreachable, busy, disk-full.
 */
export async function openStore({ database }: { readonly database: string }): Promise<Store> {
  const kind = storeKind(database);
  const dialect = kind === "postgres" ? postgresDialect(database) : embeddedDialect(database);
  const db = new Kysely<Tables>({ dialect });
  try {
    await migrate(db, kind);
  } catch (error) {
    await db.destroy();
    throw error;
  }
  return { db, kind, database, close: () => db.destroy() };
}
