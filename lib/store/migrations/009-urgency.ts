import { type Kysely, sql } from "kysely";
import type { StoreKind } from "../tables.ts";
import { columnTypes } from "./column-types.ts";

/** Place of a case whose urgency is not known; the program's own may change, this step does not. */
const NOT_KNOWN = 1;

/** Lists go by urgency and by who has a case; the urgency is reckoned beside the server, case by case. */
export async function orderByUrgency(db: Kysely<unknown>, kind: StoreKind): Promise<void> {
  const { text, integer } = columnTypes(kind);
  const real = kind === "postgres" ? sql`double precision` : sql`real`;
  const added = [
    ["assigned_to", text, undefined],
    ["assigned_name", text, undefined],
    ["told_version", integer, 0],
    ["reckoned_version", integer, 0],
    ["urgency", integer, NOT_KNOWN],
    ["level", text, undefined],
    ["danger", real, undefined],
    ["reckon_problem", text, undefined],
  ] as const;
  // One at a time: the embedded database takes one column a statement.
  for (const [name, type, value] of added) {
    await db.schema
      .alterTable("cases")
      .addColumn(name, type, (c) => (value === undefined ? c : c.notNull().defaultTo(value)))
      .execute();
  }
  await sql`update cases set told_version = version`.execute(db);
  await indexLists(db, kind);
  await sql`create index cases_to_reckon on cases (changed_at, id)
    where closed = 0 and removed_at is null and told_version > reckoned_version`.execute(db);
}

/**
 * The embedded database finds in the index itself what is searched and picked. PostgreSQL's sorted indexes take no long
 * texts, and it has an index for searching.
 */
async function indexLists(db: Kysely<unknown>, kind: StoreKind): Promise<void> {
  const picked = ["removed_at", "invented", "level", "assigned_to", "assigned_name", "owner_id", "search"];
  const more = kind === "postgres" ? [] : picked;
  await db.schema
    .createIndex("cases_urgent")
    .on("cases")
    .columns(["closed", "urgency", "opened_at", "id", ...more])
    .execute();
  await db.schema
    .createIndex("cases_oldest")
    .on("cases")
    .columns(["closed", "opened_at", "id", ...more])
    .execute();
}
