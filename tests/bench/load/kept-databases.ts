// Databases filled once and kept in the temporary folder; every run works on a copy.
import { createHash } from "node:crypto";
import { copyFileSync, existsSync, mkdirSync, renameSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { sql } from "kysely";
import pg from "pg";
import { hashPassword } from "../../../app/server/password.ts";
import type { Role } from "../../../app/server/principal.ts";
import { caseColumns, NOT_RECKONED, toldCount } from "../../../lib/store/case-columns.ts";
import { entryText, FILE_HEAD } from "../../../lib/store/entry-text.ts";
import { makeAccount, openStore, type Store } from "../../../lib/store/index.ts";
import type { CasesTable, EntriesTable } from "../../../lib/store/tables.ts";
import { findPostgres } from "../../support/find-postgres.mjs";
import { startPostgres } from "../../support/postgres-server.mjs";
import { caseIdOf, madeCase, ownerNumberOf } from "./made-cases.ts";

/** Cases in one transaction, and rows in one statement. */
const TOGETHER = 2000;
const ROWS = 400;

export const PASSWORD = "correct horse battery staple";

export interface MadePerson {
  readonly id: string;
  readonly email: string;
  readonly role: Role;
}

/** The people of a large workshop with a training class. */
export const PEOPLE: readonly MadePerson[] = (
  [
    ["owner", 1],
    ["advisor", 5],
    ["technician", 20],
    ["instructor", 2],
    ["trainee", 12],
  ] as const
).flatMap(([role, count]) =>
  Array.from({ length: count }, (_, n) => ({
    id: `${role}-${n}`,
    email: `${role}-${n}@harbour-lane.example`,
    role,
  })),
);

const ownerOf = (number: number): string => PEOPLE[ownerNumberOf(number, PEOPLE.length)]?.id ?? "";

/** Rows of a case as the store itself would have written them, its entries sent one by one. */
function rowsOf(number: number, count: number): { row: CasesTable; entries: EntriesTable[] } {
  const { id, entries, changedAt } = madeCase(number, count);
  const owner = ownerOf(number);
  const texts = entries.map(entryText);
  const rows = entries.map((entry, index) => ({
    case_id: id,
    seq: index + 1,
    id: entry.id,
    at: entry.at,
    kind: entry.kind,
    body: texts[index]?.body ?? "",
    received_at: entry.at,
    account_id: owner,
  }));
  const row = {
    id,
    owner_id: owner,
    changed_at: changedAt,
    version: entries.length,
    characters: FILE_HEAD + texts.reduce((sum, { characters }) => sum + characters, 0),
    removed_at: null,
    told_version: toldCount(entries),
    ...NOT_RECKONED,
    ...caseColumns(entries),
  };
  return { row, entries: rows };
}

/** What a kept database follows from: made anew when any of it changes. Newer tables come by migration, as in use. */
function digestOf(count: number): string {
  const sample = Array.from({ length: 40 }, (_, n) => rowsOf(Math.floor((n * count) / 40), count));
  return createHash("sha256")
    .update(JSON.stringify([count, sample, PEOPLE]))
    .digest("hex")
    .slice(0, 16);
}

async function fill(store: Store, count: number): Promise<void> {
  const passwordHash = await hashPassword(PASSWORD);
  for (const { id, email, role } of PEOPLE) {
    await makeAccount(store, { id, name: id, email, role, passwordHash, now: new Date(0).toISOString() });
  }
  for (let from = 0; from < count; from += TOGETHER) {
    const numbers = Array.from({ length: Math.min(TOGETHER, count - from) }, (_, n) => from + n);
    const made = numbers.map((number) => rowsOf(number, count));
    const cases = made.map(({ row }) => row);
    const entries = made.flatMap((one) => one.entries);
    await store.db.transaction().execute(async (trx) => {
      for (let at = 0; at < cases.length; at += ROWS) {
        await trx
          .insertInto("cases")
          .values(cases.slice(at, at + ROWS))
          .execute();
      }
      for (let at = 0; at < entries.length; at += ROWS) {
        await trx
          .insertInto("entries")
          .values(entries.slice(at, at + ROWS))
          .execute();
      }
    });
    process.stderr.write(`\rfilling the ${store.kind} database: ${from + numbers.length} cases`);
  }
  process.stderr.write("\n");
}

/** A database to work on, and how to be rid of it. */
export interface WorkingCopy {
  readonly database: string;
  readonly clear: () => Promise<void>;
}

const folderOf = (count: number): string => join(tmpdir(), `cornerwise-load-${digestOf(count)}`);

/** A copy of the embedded database with `count` cases. */
export async function embeddedCopy(count: number): Promise<WorkingCopy> {
  const folder = folderOf(count);
  const kept = join(folder, "filled.db");
  mkdirSync(folder, { recursive: true });
  if (!existsSync(kept)) {
    const half = join(folder, `half-${process.pid}.db`);
    const store = await openStore({ database: half });
    await fill(store, count);
    await sql`pragma wal_checkpoint(truncate)`.execute(store.db);
    await store.close();
    renameSync(half, kept);
  }
  const database = join(folder, `run-${process.pid}.db`);
  copyFileSync(kept, database);
  const clear = (): Promise<void> => {
    for (const end of ["", "-wal", "-shm"]) rmSync(`${database}${end}`, { force: true });
    return Promise.resolve();
  };
  return { database, clear };
}

/** A copy of the PostgreSQL database with `count` cases, on a server of our own; undefined without its programs. */
export async function postgresCopy(count: number): Promise<WorkingCopy | undefined> {
  const bin = findPostgres();
  if (bin === undefined) return undefined;
  const server = await startPostgres(bin, `${folderOf(count)}-postgres`);
  const admin = new pg.Client({ connectionString: server.url("postgres") });
  try {
    await admin.connect();
    const there = await admin.query("select datname from pg_database where datname = 'filled'");
    if (there.rowCount === 0) {
      await admin.query("drop database if exists half");
      const half = await server.createDatabase("half");
      const store = await openStore({ database: half });
      await fill(store, count);
      await store.close();
      await admin.query("alter database half rename to filled");
    }
    // A server that has run for a while has done this by itself.
    const filled = new pg.Client({ connectionString: server.url("filled") });
    await filled.connect();
    await filled.query("vacuum analyze");
    await filled.end();
    await admin.query("drop database if exists run");
    await admin.query("create database run template filled strategy file_copy");
  } catch (error) {
    await admin.end();
    await server.stop();
    throw error;
  }
  const clear = async (): Promise<void> => {
    await admin.query("drop database run with (force)");
    await admin.end();
    await server.stop();
  };
  return { database: server.url("run"), clear };
}

/** Id of a case that a person may work on, by a random number in 0..1: who learns or teaches takes their own. */
export function caseFor(person: number, random: number, count: number): string {
  const accounts = PEOPLE.length;
  if (!["trainee", "instructor"].includes(PEOPLE[person]?.role ?? ""))
    return caseIdOf(Math.floor(random * count));
  const own = Math.floor((count - 1 - person) / accounts) + 1;
  return caseIdOf(person + accounts * Math.floor(random * own));
}
