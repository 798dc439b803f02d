import { type Kysely, sql } from "kysely";
import type { StoreKind } from "../tables.ts";

/** Lists of cases are searched in an index instead of row by row. */
export async function indexSearch(db: Kysely<unknown>, kind: StoreKind): Promise<void> {
  if (kind === "postgres") await indexTrigrams(db);
  else await searchWithinIndexes(db);
}

/** Indexes by which lists are sorted, and the columns that stand first in each. */
const SORTED = { cases_changed: [], cases_owner: ["owner_id"], cases_closed: ["closed"] };

/** They hold what is looked for as well, so that rows are read only where it is found. */
async function searchWithinIndexes(db: Kysely<unknown>): Promise<void> {
  for (const [name, first] of Object.entries(SORTED)) {
    await db.schema.dropIndex(name).execute();
    await db.schema
      .createIndex(name)
      .on("cases")
      .columns([...first, "changed_at", "id", "removed_at", "search"])
      .execute();
  }
}

/**
 * PostgreSQL finds letters inside words by its own extension pg_trgm. A server without it, or on which this account may not
 * add it, answers all the same, more slowly.
 */
async function indexTrigrams(db: Kysely<unknown>): Promise<void> {
  const { rows } = await sql`
    select 1 from pg_available_extension_versions
    where name = 'pg_trgm' and trusted and has_database_privilege(current_database(), 'create')
    union all select 1 from pg_extension where extname = 'pg_trgm'`.execute(db);
  if (rows.length === 0) return;
  await sql`create extension if not exists pg_trgm`.execute(db);
  await sql`create index cases_search on cases using gin (search gin_trgm_ops)`.execute(db);
}
