import { getMigrations } from "better-auth/db/migration";
import { type Kysely, sql } from "kysely";
import { expect, it } from "vitest";
import { appendEntries, entriesAfter, openStore, type Store } from "../../lib/store/index.ts";
import { migrate } from "../../lib/store/migrate.ts";
import { MIGRATIONS } from "../../lib/store/migrations/index.ts";
import { columnTypes } from "../../lib/store/migrations/column-types.ts";
import { buildProgram, endOf, startProgram } from "../support/child-program.ts";
import { opening, second } from "../support/made-entries.ts";
import { forEachStore } from "../support/stores.ts";

const names = async (store: Store): Promise<string[]> =>
  (await store.db.introspection.getTables()).map(({ name }) => name).sort();

forEachStore("migrations of the store", (databases) => {
  const future = {
    ...MIGRATIONS,
    "999-future": async (db: Kysely<unknown>): Promise<void> => {
      await db.schema.createTable("future").addColumn("id", "integer").execute();
    },
  };

  it("give the library of accounts the tables that it asks for", async () => {
    const store = await databases.open();
    // better-auth compares the tables with what it would make itself, for this very configuration.
    const warnings: string[] = [];
    const plan = await getMigrations({
      logger: { level: "warn", log: (_level, message) => warnings.push(message) },
      database: { db: store.db, type: databases.kind === "postgres" ? "postgres" : "sqlite" },
      emailAndPassword: { enabled: true },
      rateLimit: { enabled: true, storage: "database" },
      user: {
        additionalFields: {
          role: { type: "string", required: true },
          disabled: { type: "boolean", required: true },
        },
      },
    });
    expect(plan.toBeCreated).toEqual([]);
    expect(plan.toBeAdded).toEqual([]);
    expect(warnings).toEqual([]);
  });

  it("are safe when several processes open an empty database at once", async () => {
    const database = await databases.fresh();
    const program = buildProgram("open-store.ts");
    const ended = await Promise.all(
      Array.from({ length: 4 }, () => endOf(startProgram(program, [database]))),
    );
    expect(ended.map(({ code, errors }) => [code, errors])).toEqual(ended.map(() => [0, ""]));
    expect(new Set(ended.flatMap(({ lines }) => lines)).size).toBe(1);
    const store = await databases.reopen(database);
    expect(await names(store)).toEqual(await names(await databases.open()));
  });

  it("bring an older database forward and keep what is in it", async () => {
    const database = await databases.fresh();
    const whole = await databases.reopen(database);
    const entries = [opening("old")];
    await appendEntries(whole, { caseId: "old", entries, accountId: null, ownerId: null, now: second(1) });
    await migrate(whole.db, databases.kind, {
      ...MIGRATIONS,
      "998-more": async (db) => {
        const { text } = columnTypes(databases.kind);
        await db.schema
          .alterTable("cases")
          .addColumn("bay", text, (c) => c.notNull().defaultTo("1"))
          .execute();
      },
    });
    const { rows } = await sql<{ bay: string }>`select bay from cases`.execute(whole.db);
    expect(rows).toEqual([{ bay: "1" }]);
    expect((await entriesAfter(whole, "old", 0, 10)).entries.map(({ entry }) => entry)).toEqual(entries);
  });

  it("leave nothing behind when one of them fails, and can be run again", async () => {
    const database = await databases.fresh();
    const store = await databases.reopen(database);
    const before = await names(store);
    const failing = {
      ...MIGRATIONS,
      "998-half": async (db: Kysely<unknown>): Promise<void> => {
        await db.schema.createTable("half").addColumn("id", "integer").execute();
        await sql`insert into cases (id) values ('no other column')`.execute(db);
      },
    };
    await expect(migrate(store.db, databases.kind, failing)).rejects.toThrow();
    expect(await names(store)).toEqual(before);
    await migrate(store.db, databases.kind, future);
    expect(await names(store)).toEqual([...before, "future"].sort());
  });

  it("refuse a database of a newer version, saying what to do, and leave it as it is", async () => {
    const database = await databases.fresh();
    const newer = await databases.reopen(database);
    await migrate(newer.db, databases.kind, future);
    await expect(openStore({ database })).rejects.toMatchObject({
      code: "newer-database",
      message: expect.stringMatching(/newer version.*999-future.*Update/s),
    });
    expect(await names(newer)).toContain("future");
  });
});
