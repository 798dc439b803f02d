import type { Kysely } from "kysely";
import type { StoreKind } from "../tables.ts";
import { columnTypes } from "./column-types.ts";

/** Accounts count their changes, so that two owners do not undo each other's unseen. */
export async function countAccountChanges(db: Kysely<unknown>, kind: StoreKind): Promise<void> {
  const { integer } = columnTypes(kind);
  await db.schema
    .alterTable("user")
    .addColumn("version", integer, (c) => c.notNull().defaultTo(1))
    .execute();
}
