import type { Kysely } from "kysely";

/** Open and closed cases are listed by themselves; without it a list of few closed ones would look through all cases. */
export async function indexClosedCases(db: Kysely<unknown>): Promise<void> {
  await db.schema.createIndex("cases_closed").on("cases").columns(["closed", "changed_at", "id"]).execute();
}
