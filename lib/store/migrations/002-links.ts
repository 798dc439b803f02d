import type { Kysely } from "kysely";
import type { StoreKind } from "../tables.ts";
import { columnTypes } from "./column-types.ts";

/** Links for outsiders. */
export async function makeLinks(db: Kysely<unknown>, kind: StoreKind): Promise<void> {
  const { text } = columnTypes(kind);
  await db.schema
    .createTable("links")
    .addColumn("id", text, (c) => c.primaryKey())
    .addColumn("token_hash", text, (c) => c.notNull().unique())
    .addColumn("kind", text, (c) => c.notNull())
    .addColumn("target", text, (c) => c.notNull())
    .addColumn("made_by", text)
    .addColumn("made_at", text, (c) => c.notNull())
    .addColumn("expires_at", text, (c) => c.notNull())
    .addColumn("revoked_at", text)
    .execute();
  await db.schema.createIndex("links_target").on("links").columns(["target", "made_at"]).execute();
}
