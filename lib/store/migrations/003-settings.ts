import type { Kysely } from "kysely";
import type { StoreKind } from "../tables.ts";
import { columnTypes } from "./column-types.ts";

/** What is set once for the whole workshop. */
export async function makeSettings(db: Kysely<unknown>, kind: StoreKind): Promise<void> {
  const { text } = columnTypes(kind);
  await db.schema
    .createTable("settings")
    .addColumn("key", text, (c) => c.primaryKey())
    .addColumn("value", text, (c) => c.notNull())
    .execute();
}
