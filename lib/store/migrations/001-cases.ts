import type { Kysely } from "kysely";
import type { StoreKind } from "../tables.ts";
import { columnTypes } from "./column-types.ts";

/** Cases and their entries. */
export async function makeCases(db: Kysely<unknown>, kind: StoreKind): Promise<void> {
  const { text, integer } = columnTypes(kind);
  await db.schema
    .createTable("cases")
    .addColumn("id", text, (c) => c.primaryKey())
    .addColumn("owner_id", text)
    .addColumn("opened_at", text, (c) => c.notNull())
    .addColumn("changed_at", text, (c) => c.notNull())
    .addColumn("version", integer, (c) => c.notNull())
    .addColumn("characters", integer, (c) => c.notNull())
    .addColumn("customer", text, (c) => c.notNull())
    .addColumn("vehicle", text, (c) => c.notNull())
    .addColumn("plate", text)
    .addColumn("search", text, (c) => c.notNull())
    .addColumn("invented", integer, (c) => c.notNull())
    .addColumn("closed", integer, (c) => c.notNull())
    .addColumn("removed_at", text)
    .execute();
  await db.schema.createIndex("cases_changed").on("cases").columns(["changed_at", "id"]).execute();
  await db.schema.createIndex("cases_owner").on("cases").columns(["owner_id", "changed_at", "id"]).execute();
  await db.schema
    .createTable("entries")
    .addColumn("case_id", text, (c) => c.notNull().references("cases.id"))
    .addColumn("seq", integer, (c) => c.notNull())
    .addColumn("id", text, (c) => c.notNull())
    .addColumn("at", text, (c) => c.notNull())
    .addColumn("kind", text, (c) => c.notNull())
    .addColumn("body", text, (c) => c.notNull())
    .addColumn("received_at", text, (c) => c.notNull())
    .addColumn("account_id", text)
    .addPrimaryKeyConstraint("entries_id", ["case_id", "id"])
    .addUniqueConstraint("entries_seq", ["case_id", "seq"])
    .execute();
}
