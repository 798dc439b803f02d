import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { sql } from "kysely";
import { afterAll, expect, it } from "vitest";
import { caseHead, entriesAfter, openStore, type Store } from "../../lib/store/index.ts";
import { type Crashes, letWritersDie } from "../support/crash-writers.ts";
import { findPostgres } from "../support/find-postgres.mjs";
import { startPostgres } from "../support/postgres-server.mjs";

const SEED = 20261128;
const KILLS = 100;

/** Every delivery whole or not at all, every acknowledged one there, numbers without a gap, the head as its entries say. */
async function expectNothingLost(store: Store, { acknowledged }: Crashes): Promise<void> {
  const caseIds = [...new Set(acknowledged.map(({ caseId }) => caseId))];
  expect(caseIds).toHaveLength(3);
  for (const caseId of caseIds) {
    const { version, entries } = await entriesAfter(store, caseId, 0, 100_000);
    expect(entries.map(({ seq }) => seq)).toEqual(Array.from({ length: version }, (_, i) => i + 1));
    const there = new Set(entries.map(({ entry }) => entry.id));
    expect(there.size).toBe(version);
    const lost = acknowledged
      .filter((one) => one.caseId === caseId)
      .flatMap(({ ids }) => ids.filter((id) => !there.has(id)));
    expect(lost).toEqual([]);
    const torn = [...there].filter((id) => {
      const [, delivery, size] = /^(.*)-\d+-of-(\d+)$/.exec(id) ?? [];
      if (delivery === undefined) return false;
      return Array.from({ length: Number(size) }, (_, i) => `${delivery}-${i}-of-${size}`).some(
        (other) => !there.has(other),
      );
    });
    expect(torn).toEqual([]);
    expect(await caseHead(store, caseId)).toMatchObject({ customer: "Invented Customer", closed: false });
  }
}

const folder = mkdtempSync(join(tmpdir(), "cornerwise-crashes-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

// Killing a process leaves what the operating system still holds; that a commit waits for the disk is a setting.
// 2 is FULL: https://www.sqlite.org/pragma.html#pragma_synchronous (from memory).
it("the embedded database waits for the disk at every commit", async () => {
  const store = await openStore({ database: join(folder, "settings.db") });
  expect((await sql`pragma synchronous`.execute(store.db)).rows).toEqual([{ synchronous: 2 }]);
  expect((await sql`pragma journal_mode`.execute(store.db)).rows).toEqual([{ journal_mode: "wal" }]);
  await store.close();
});

it("the embedded database loses nothing that it acknowledged, however its writers are killed", async () => {
  const database = join(folder, "shop.db");
  const crashes = await letWritersDie({ database, rounds: KILLS / 4, seed: SEED });
  expect(crashes).toMatchObject({ kills: KILLS, errors: [] });
  expect(crashes.acknowledged.length).toBeGreaterThan(KILLS);
  const store = await openStore({ database });
  await expectNothingLost(store, crashes);
  expect((await sql`pragma integrity_check`.execute(store.db)).rows).toEqual([{ integrity_check: "ok" }]);
  expect((await sql`pragma foreign_key_check`.execute(store.db)).rows).toEqual([]);
  await store.close();
}, 300_000);

it.skipIf(findPostgres() === undefined)(
  "PostgreSQL loses nothing that it acknowledged, however its writers and itself are killed",
  async () => {
    const server = await startPostgres(findPostgres() ?? "");
    try {
      const database = await server.createDatabase("crashes");
      const crashes = await letWritersDie({
        database,
        rounds: KILLS / 4 + 3,
        seed: SEED,
        broken: [7, 15, 23],
        breakServer: async () => {
          await server.stop("immediate");
          await server.start();
        },
      });
      expect(crashes).toMatchObject({ kills: KILLS, errors: [] });
      expect(crashes.acknowledged.length).toBeGreaterThan(KILLS);
      const store = await openStore({ database });
      await expectNothingLost(store, crashes);
      // A commit waits for the disk even where the server is set not to wait.
      await sql`alter database crashes set synchronous_commit = off`.execute(store.db);
      await store.close();
      const later = await openStore({ database });
      expect((await sql`show synchronous_commit`.execute(later.db)).rows).toEqual([
        { synchronous_commit: "on" },
      ]);
      await later.close();
    } finally {
      await server.clear();
    }
  },
  300_000,
);
