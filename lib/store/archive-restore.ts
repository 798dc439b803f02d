import { setImmediate as turn } from "node:timers/promises";
import type { Transaction } from "kysely";
import { CASE_LIMITS } from "../case/case-file.ts";
import type { Entry } from "../case/entries.ts";
import { parseEntry } from "../case/parse-entry.ts";
import type { ArchivedAccount, ArchivedCase, ArchivedPhoto, Manifest } from "./archive-form.ts";
import { flagOf, NO_TOKENS } from "./account-columns.ts";
import { badArchive, type OpenArchive, openArchive } from "./archive-read.ts";
import { caseColumns, NOT_RECKONED, toldCount } from "./case-columns.ts";
import { restoreExercises } from "./archive-restore-exercises.ts";
import { entryText, FILE_HEAD } from "./entry-text.ts";
import { columnText } from "./plain-text.ts";
import { StoreProblem } from "./problem.ts";
import type { CasesTable, EntriesTable, PhotosTable, Store, StoreKind, Tables } from "./tables.ts";

/** Rows of one insert; SQLite takes 32,766 values. */
const ROWS = 500;

type Restored = Pick<
  Manifest,
  "cases" | "entries" | "accounts" | "links" | "photos" | "exercises" | "handOuts" | "attempts"
>;
type Rename = (id: string | null) => string | null;

/**
 * Puts an archive into a shop that has no cases and no exercises yet: all of it or, on any error, nothing.
 *
 * A person who has an account here already is known by the e-mail address and keeps this account; the cases of the
 * archived one become theirs. Nobody is signed in by it.
 *
 * Shape   bytes: what writeArchive made, one after the other. Gives how much was taken in.
 * Errors  StoreProblem bad-archive, not-empty, disk-full, read-only, unreachable, busy.
 */
export async function restoreArchive(store: Store, bytes: Uint8Array): Promise<Restored> {
  const archive = openArchive(bytes);
  try {
    return await store.db.transaction().execute((trx) => restoreIn(trx, store.kind, archive));
  } catch (error) {
    throw isRefusal(error)
      ? badArchive("it holds something twice, or what no column can hold", error)
      : error;
  }
}

/** Whether the database refused a value: SQLite's constraints, classes 22 and 23 of SQLSTATE. */
function isRefusal(error: unknown): boolean {
  return (
    error instanceof Error && "code" in error && /^(SQLITE_CONSTRAINT|2[23]\d{3})/.test(String(error.code))
  );
}

async function restoreIn(trx: Transaction<Tables>, kind: StoreKind, archive: OpenArchive): Promise<Restored> {
  const there =
    (await trx.selectFrom("cases").select("id").limit(1).executeTakeFirst()) ??
    (await trx.selectFrom("exercises").select("id").limit(1).executeTakeFirst());
  if (there !== undefined) {
    throw new StoreProblem(
      "not-empty",
      "This shop has cases of its own, or exercises. An archive goes into an empty one: name a new database, or clear this one away first.",
    );
  }
  const accounts = archive.accounts();
  const rename = await restoreAccounts(trx, kind, accounts);
  const links = archive.links();
  await insertRows(
    trx,
    "links",
    links.map((link) => ({ ...link, made_by: rename(link.made_by) })),
  );
  const exercises = await restoreExercises(archive, {
    insert: (table, rows) => insertRows(trx, table, rows),
    rename,
    readEntry: checkedEntry,
  });
  const done = {
    cases: 0,
    entries: 0,
    accounts: accounts.length,
    links: links.length,
    photos: 0,
    ...exercises,
  };
  const seen = new Set<string>();
  for (const cases of archive.cases()) {
    for (const one of cases) {
      if (seen.has(one.id)) throw badArchive(`case ${one.id} is in it twice`);
      seen.add(one.id);
    }
    const rows = cases.map((one) => rowsOf(one, rename));
    await insertRows(
      trx,
      "cases",
      rows.map(({ head }) => head),
    );
    await insertRows(
      trx,
      "entries",
      rows.flatMap(({ entries }) => entries),
    );
    done.cases += cases.length;
    done.entries += rows.reduce((sum, { entries }) => sum + entries.length, 0);
    await turn();
  }
  for (const photos of archive.photos()) {
    for (const one of photos) {
      if (!seen.has(one.caseId)) throw badArchive(`it holds a photo of a case that it does not hold`);
      await trx.insertInto("photos").values(photoRow(one, rename)).execute();
    }
    done.photos += photos.length;
    await turn();
  }
  const wrong = (Object.keys(done) as (keyof Restored)[]).find((key) => done[key] !== archive.manifest[key]);
  if (wrong !== undefined) {
    throw badArchive(`its manifest says ${archive.manifest[wrong]} ${wrong}, it holds ${done[wrong]}`);
  }
  return done;
}

async function insertRows<T extends keyof Tables>(
  trx: Transaction<Tables>,
  table: T,
  rows: readonly Tables[T][],
): Promise<void> {
  for (let from = 0; from < rows.length; from += ROWS) {
    const some = rows.slice(from, from + ROWS);
    await trx
      .insertInto(table as "links")
      .values(some as readonly Tables["links"][])
      .execute();
  }
}

/** Rows of one case, as they would be had its entries been added one after the other. */
function rowsOf(
  one: ArchivedCase,
  rename: Rename,
): { readonly head: CasesTable; readonly entries: EntriesTable[] } {
  const where = `case ${one.id}`;
  const entries = one.entries.map(({ entry }, i) =>
    checkedEntry(entry, one.id, `entry ${i + 1} of ${where}`),
  );
  const texts = entries.map(entryText);
  if (new Set(entries.map(({ id }) => id)).size < entries.length)
    throw badArchive(`${where} has an entry twice`);
  const characters = texts.reduce((sum, text) => sum + text.characters, FILE_HEAD);
  if (characters > CASE_LIMITS.characters) throw badArchive(`${where} is larger than a case may be`);
  const removed = one.removedAt !== null;
  if (removed ? entries.length > 0 : one.version !== entries.length) {
    throw badArchive(`${where} has another number of entries than it says`);
  }
  if (!removed && !entries.some(({ kind }) => kind === "opened")) throw badArchive(`${where} has no opening`);
  const columns = removed
    ? {
        opened_at: one.openedAt,
        customer: "",
        vehicle: "",
        plate: null,
        search: "",
        invented: 0 as const,
        closed: 0 as const,
        assigned_to: null,
        assigned_name: null,
      }
    : caseColumns(entries);
  return {
    head: {
      id: one.id,
      owner_id: rename(one.ownerId),
      changed_at: one.changedAt,
      version: one.version,
      characters: removed ? 0 : characters,
      removed_at: one.removedAt,
      ...columns,
      assigned_to: rename(columns.assigned_to),
      told_version: toldCount(entries),
      ...NOT_RECKONED,
    },
    entries: entries.map((entry, i) => ({
      case_id: one.id,
      seq: i + 1,
      id: entry.id,
      at: entry.at,
      kind: columnText(entry.kind),
      body: texts[i]?.body ?? "",
      received_at: one.entries[i]?.receivedAt ?? "",
      account_id: rename(one.entries[i]?.accountId ?? null),
    })),
  };
}

function photoRow(one: ArchivedPhoto, rename: Rename): PhotosTable {
  const bytes = Buffer.from(one.base64, "base64");
  return {
    case_id: one.caseId,
    id: one.id,
    width: one.width,
    height: one.height,
    size: bytes.length,
    received_at: one.receivedAt,
    account_id: rename(one.accountId),
    link_id: one.linkId,
    bytes,
  };
}

function checkedEntry(value: unknown, caseId: string, where: string): Entry {
  let entry: Entry;
  try {
    entry = parseEntry(value, where);
  } catch (cause) {
    throw badArchive(cause instanceof Error ? cause.message.replace(/\. .*$/s, "") : where, cause);
  }
  if (entry.caseId !== caseId) throw badArchive(`${where} belongs to case ${entry.caseId}`);
  return entry;
}

/** Takes people in, and gives who those of the archive are here. */
async function restoreAccounts(
  trx: Transaction<Tables>,
  kind: StoreKind,
  accounts: readonly ArchivedAccount[],
): Promise<Rename> {
  const here = await trx.selectFrom("user").select(["id", "email"]).execute();
  const byEmail = new Map(here.map(({ id, email }) => [email.toLowerCase(), id]));
  const ids = new Map<string, string>();
  for (const { signIns, emailVerified, disabled, ...person } of accounts) {
    const known = byEmail.get(person.email.toLowerCase());
    ids.set(person.id, known ?? person.id);
    if (known !== undefined) continue;
    byEmail.set(person.email.toLowerCase(), person.id);
    await trx
      .insertInto("user")
      .values({ ...person, emailVerified: flagOf(kind, emailVerified), disabled: flagOf(kind, disabled) })
      .execute();
    for (const way of signIns) {
      await trx
        .insertInto("account")
        .values({
          ...way,
          userId: person.id,
          ...NO_TOKENS,
        })
        .execute();
    }
  }
  return (id) => (id === null ? null : (ids.get(id) ?? id));
}
