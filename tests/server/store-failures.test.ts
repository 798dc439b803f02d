import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { chmodSync, chownSync, mkdirSync, mkdtempSync, rmSync, truncateSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { sql } from "kysely";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { type Appended, appendEntries, entriesAfter, openStore, type Store } from "../../lib/store/index.ts";
import { findPostgres } from "../support/find-postgres.mjs";
import { buildProgram, endOf, startProgram } from "../support/child-program.ts";
import { note, opening, second } from "../support/made-entries.ts";
import { type PostgresServer, startPostgres } from "../support/postgres-server.mjs";
import { type SmallDisk, smallDisk } from "../support/small-disk.ts";

/** Long enough to fill a disk, and nothing that a database could squeeze; repeatable. */
const longText = (n: number): string =>
  Array.from({ length: 60 }, (_, i) => createHash("sha256").update(`${n} ${i}`).digest("hex")).join("");

const append = (store: Store, from: number, count = 1): Promise<Appended> => {
  const entries = Array.from({ length: count }, (_, i) => note("c", `n${from + i}`, longText(from + i)));
  const all = from === 0 ? [opening("c"), ...entries] : entries;
  return appendEntries(store, { caseId: "c", entries: all, accountId: null, ownerId: null, now: second(1) });
};

/** Adds until the store refuses; gives how many were acknowledged and what it said then. */
async function fill(store: Store): Promise<{ acknowledged: number; problem: unknown }> {
  for (let i = 0; i < 2000; i++) {
    try {
      await append(store, i);
    } catch (problem) {
      return { acknowledged: i, problem };
    }
  }
  throw new Error("the disk did not get full");
}

/** Whether all that was acknowledged is there, and nothing but that. */
async function expectEntries(store: Store, acknowledged: number): Promise<void> {
  const { version, entries } = await entriesAfter(store, "c", 0, 10_000);
  expect(version).toBe(acknowledged + 1);
  expect(entries.map(({ seq }) => seq)).toEqual(Array.from({ length: version }, (_, i) => i + 1));
  expect(entries.slice(1).map(({ entry }) => entry.id)).toEqual(
    Array.from({ length: acknowledged }, (_, i) => `n${i}`),
  );
}

const integrity = async (store: Store): Promise<unknown> =>
  (await sql`pragma integrity_check`.execute(store.db)).rows;
const SOUND = [{ integrity_check: "ok" }];

const DISK_FULL = {
  name: "StoreProblem",
  code: "disk-full",
  message: expect.stringMatching(/Free some space/),
};

describe("the embedded database when something fails", () => {
  const folder = mkdtempSync(join(tmpdir(), "cornerwise-failures-"));
  const stores: Store[] = [];
  const open = async (database: string): Promise<Store> => {
    const store = await openStore({ database });
    stores.push(store);
    return store;
  };
  afterAll(async () => {
    await Promise.all(stores.map((store) => store.close()));
    rmSync(folder, { recursive: true, force: true });
  });

  it("is full: says so, keeps what was acknowledged, and takes writes again when there is room", async () => {
    const store = await open(join(folder, "full.db"));
    await sql`pragma max_page_count = 150`.execute(store.db);
    const { acknowledged, problem } = await fill(store);
    expect(problem).toMatchObject({ ...DISK_FULL, message: expect.stringContaining("full.db") });
    expect(acknowledged).toBeGreaterThan(5);
    await expectEntries(store, acknowledged);
    expect(await integrity(store)).toEqual(SOUND);
    await sql`pragma max_page_count = 100000`.execute(store.db);
    await append(store, acknowledged, 20);
    await expectEntries(store, acknowledged + 20);
  });

  it.each([
    ["a path that leads through a file", () => join(folder, "full.db", "shop.db"), "cannot-open"],
    ["a folder", () => folder, "cannot-open"],
    [
      "a file that is no database",
      () => written("words.db", "These are words. ".repeat(500)),
      "not-a-database",
    ],
  ])("is %s: says so and what to do", async (_what, path, code) => {
    const database = path();
    await expect(openStore({ database })).rejects.toMatchObject({
      name: "StoreProblem",
      code,
      message: expect.stringMatching(/CORNERWISE_DATABASE|Look whether/),
    });
  });

  const written = (name: string, text: string): string => {
    const path = join(folder, name);
    writeFileSync(path, text);
    return path;
  };

  it("is cut off: says that it is damaged, and what to do", async () => {
    const database = join(folder, "cut.db");
    const store = await openStore({ database });
    await append(store, 0, 50);
    await sql`pragma wal_checkpoint(truncate)`.execute(store.db);
    await store.close();
    truncateSync(database, 20_000);
    const damaged = openStore({ database }).then((reopened) => {
      stores.push(reopened);
      return entriesAfter(reopened, "c", 0, 1000);
    });
    await expect(damaged).rejects.toMatchObject({
      code: "not-a-database",
      message: expect.stringMatching(/damaged.*restore the last backup/),
    });
  });

  it("has its value types checked before they reach the driver, which would end the process", async () => {
    const store = await open(join(folder, "types.db"));
    const given = async (value: unknown): Promise<unknown> =>
      (await sql<{ it: unknown }>`select ${value} as it`.execute(store.db)).rows[0]?.it;
    expect(await given(true)).toBe(1);
    expect(await given(new Date(0))).toBe("1970-01-01T00:00:00.000Z");
    await expect(given({ an: "object" })).rejects.toThrow(/cannot hold a value of type object/);
  });

  // Root may write everywhere.
  it.skipIf(process.getuid?.() === 0)("may not be written: says so and what to do", async () => {
    const place = join(folder, "locked");
    mkdirSync(place);
    const database = join(place, "shop.db");
    await (await openStore({ database })).close();
    chmodSync(database, 0o444);
    await expect(openStore({ database })).rejects.toMatchObject({ code: "read-only" });
    chmodSync(place, 0o555);
    await expect(openStore({ database: join(place, "inner", "shop.db") })).rejects.toMatchObject({
      code: "read-only",
    });
    chmodSync(place, 0o755);
  });

  describe("on a disk of its own", () => {
    let disk: SmallDisk | undefined;
    beforeEach(() => {
      disk = smallDisk(700);
    });
    afterEach(() => disk?.clear());

    it("which is full: says so, and goes on when there is room", async ({ skip }) => {
      if (disk === undefined) return skip("needs root and the right to mount");
      const database = join(disk.folder, "shop.db");
      const store = await openStore({ database });
      const { acknowledged, problem } = await fill(store);
      expect(problem).toMatchObject(DISK_FULL);
      await expectEntries(store, acknowledged);
      disk.leave(4000);
      await append(store, acknowledged, 20);
      await expectEntries(store, acknowledged + 20);
      expect(await integrity(store)).toEqual(SOUND);
      await store.close();
    });

    it("which may only be read: says so, and opens it when it may be written", async ({ skip }) => {
      if (disk === undefined) return skip("needs root and the right to mount");
      const database = join(disk.folder, "other", "shop.db");
      // Another process makes it: a file that this one has open would keep the disk from being locked.
      expect((await endOf(startProgram(buildProgram("open-store.ts"), [database]))).code).toBe(0);
      disk.allowWrites(false);
      for (const path of [database, join(disk.folder, "inner", "shop.db")]) {
        await expect(openStore({ database: path })).rejects.toMatchObject({
          code: "read-only",
          message: expect.stringMatching(/may only be read/),
        });
      }
      disk.allowWrites(true);
      await append(await open(database), 0);
    });
  });
});

describe.skipIf(findPostgres() === undefined)("PostgreSQL when something fails", () => {
  let server: PostgresServer;
  let disk: SmallDisk | undefined;
  const stores: Store[] = [];
  const open = async (database: string): Promise<Store> => {
    const store = await openStore({ database });
    stores.push(store);
    return store;
  };
  beforeAll(async () => {
    server = await startPostgres(findPostgres() ?? "");
  });
  afterAll(async () => {
    await Promise.all(stores.map((store) => store.close()));
    await server.clear();
    disk?.clear();
  });

  it("does not answer: says so, and goes on when it answers again", async () => {
    const database = await server.createDatabase("gone");
    const store = await open(database);
    await append(store, 0, 3);
    const UNREACHABLE = {
      code: "unreachable",
      message: expect.stringMatching(/Look whether the server runs/),
    };
    await server.stop("immediate");
    await expect(append(store, 3)).rejects.toMatchObject(UNREACHABLE);
    await expect(entriesAfter(store, "c", 0, 10)).rejects.toMatchObject(UNREACHABLE);
    await expect(openStore({ database })).rejects.toMatchObject(UNREACHABLE);
    await server.start();
    await append(store, 3, 2);
    await expectEntries(store, 5);
  });

  it("does not take the password or has no such database: says which", async () => {
    const wrong = Object.assign(new URL(server.url("postgres")), { password: "wrong" }).href;
    await expect(openStore({ database: wrong })).rejects.toMatchObject({
      code: "cannot-open",
      message: expect.stringMatching(/user or password/),
    });
    await expect(openStore({ database: server.url("nowhere") })).rejects.toMatchObject({
      code: "cannot-open",
      message: expect.stringMatching(/no database of that name/),
    });
  });

  it("may only be read: says so", async () => {
    const database = await server.createDatabase("reader");
    const first = await openStore({ database });
    await append(first, 0);
    await sql`alter database reader set default_transaction_read_only = on`.execute(first.db);
    await first.close();
    const store = await open(database);
    await expect(append(store, 1)).rejects.toMatchObject({ code: "read-only" });
    await expectEntries(store, 1);
  });

  it("is full: says so, keeps what was acknowledged, and takes writes again when there is room", async ({
    skip,
  }) => {
    disk = smallDisk(60_000);
    if (disk === undefined) return skip("needs root and the right to mount");
    const owner = Number(spawnSync("stat", ["-c", "%u", server.folder], { encoding: "utf8" }).stdout);
    chownSync(disk.folder, owner, owner);
    const admin = await open(await server.createDatabase("admin"));
    await sql`create tablespace small location ${sql.lit(disk.folder)}`.execute(admin.db);
    await sql`create database small tablespace small`.execute(admin.db);
    const store = await open(server.url("small"));
    disk.leave(500);
    const { acknowledged, problem } = await fill(store);
    expect(problem).toMatchObject(DISK_FULL);
    expect(acknowledged).toBeGreaterThan(5);
    await expectEntries(store, acknowledged);
    disk.leave(20_000);
    await append(store, acknowledged, 20);
    await expectEntries(store, acknowledged + 20);
  });
});
