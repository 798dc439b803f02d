import { sql } from "kysely";
import { expect, it } from "vitest";
import { appendEntries, listCases } from "../../lib/store/index.ts";
import { opening, second } from "../support/made-entries.ts";
import { forEachStore } from "../support/stores.ts";

forEachStore("searching the store", (databases) => {
  it("looks for words in an index, not row by row", async () => {
    const { db, kind } = await databases.open();
    const like = sql`search like '%rare%' escape '\\'`;
    if (kind === "embedded") {
      // Source  sqlite.org/eqp.html, 1.1: with a covering index the rows of the table are not read.
      const { rows } = await sql<{ detail: string }>`explain query plan
        select id, changed_at from cases where removed_at is null and ${like}
        order by changed_at desc, id desc`.execute(db);
      expect(rows.map(({ detail }) => detail)).toEqual(["SCAN cases USING COVERING INDEX cases_changed"]);
      return;
    }
    // Source  PostgreSQL manual, F.35 pg_trgm, index support: a GIN index of trigrams serves LIKE.
    const plan = await db.transaction().execute(async (trx) => {
      await sql`set local enable_seqscan = off`.execute(trx);
      await sql`set local enable_indexscan = off`.execute(trx);
      return sql<Record<string, string>>`explain select id from cases where ${like}`.execute(trx);
    });
    expect(JSON.stringify(plan.rows)).toContain("Bitmap Index Scan on cases_search");
  });

  it("takes the longest texts, which no sorted index of PostgreSQL could hold", async () => {
    const store = await databases.open();
    // One character that Unicode writes out as eighteen (UAX 15, NFKD of U+FDFA).
    const customer = "\ufdfa".repeat(200);
    const entries = [opening("long", { customer, vehicle: "\ufdfa".repeat(199) + "x" })];
    await appendEntries(store, {
      caseId: "long",
      entries,
      accountId: null,
      ownerId: null,
      now: second(1),
    });
    const { cases } = await listCases(store, { text: "x", limit: 10 });
    expect(cases.map(({ id }) => id)).toEqual(["long"]);
  });
});
