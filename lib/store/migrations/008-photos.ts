import type { Kysely } from "kysely";
import type { StoreKind } from "../tables.ts";
import { columnTypes } from "./column-types.ts";

/** Photos of cases; and of a link to a form, what the customer is told, when it was opened first and when it was done. */
export async function makePhotos(db: Kysely<unknown>, kind: StoreKind): Promise<void> {
  const { text, integer, bytes } = columnTypes(kind);
  await db.schema
    .createTable("photos")
    .addColumn("case_id", text, (c) => c.notNull().references("cases.id"))
    .addColumn("id", text, (c) => c.notNull())
    .addColumn("width", integer, (c) => c.notNull())
    .addColumn("height", integer, (c) => c.notNull())
    .addColumn("size", integer, (c) => c.notNull())
    .addColumn("received_at", text, (c) => c.notNull())
    .addColumn("account_id", text)
    .addColumn("link_id", text)
    .addColumn("bytes", bytes, (c) => c.notNull())
    .addPrimaryKeyConstraint("photos_id", ["case_id", "id"])
    .execute();
  // Not the row itself is read for it: that holds the whole picture.
  await db.schema.createIndex("photos_size").on("photos").column("size").execute();
  // One at a time: SQLite adds no more than one column in a statement.
  for (const column of ["words", "opened_at", "done_at"]) {
    await db.schema.alterTable("links").addColumn(column, text).execute();
  }
}
