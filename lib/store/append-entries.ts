import type { Transaction } from "kysely";
import { CASE_LIMITS } from "../case/case-file.ts";
import type { Entry } from "../case/entries.ts";
import { caseColumns, HEAD_KINDS, NOT_RECKONED, toldCount } from "./case-columns.ts";
import { entryFromText, type EntryText, entryText, FILE_HEAD } from "./entry-text.ts";
import { lockedCase, noSuchCase } from "./locked-case.ts";
import { columnText } from "./plain-text.ts";
import { StoreProblem } from "./problem.ts";
import type { Store, Tables } from "./tables.ts";

/** Rows of one insert; SQLite takes 32,766 values. */
const ROWS = 500;

export interface AppendRequest {
  readonly caseId: string;
  /** As `parseEntry` gives them, all of this case, in any order; the first delivery holds the opening. */
  readonly entries: readonly Entry[];
  /** Who sends them; null when nobody has an account. */
  readonly accountId: string | null;
  /** Whose case it becomes when it is new. */
  readonly ownerId: string | null;
  /** The sender saw no such case: one that somebody else made meanwhile is not theirs to add to. */
  readonly asNew?: boolean;
  /** ISO 8601, UTC. */
  readonly now: string;
}

export interface Appended {
  /** Number of entries that the case holds now. */
  readonly version: number;
  /** Ids that were new. */
  readonly added: readonly string[];
  /** Ids that were there already, the same. */
  readonly known: readonly string[];
}

type Kept = EntryText & { readonly entry: Entry };

function keptById(caseId: string, entries: readonly Entry[]): Map<string, Kept> {
  const byId = new Map<string, Kept>();
  for (const entry of entries) {
    if (entry.caseId !== caseId) {
      throw new StoreProblem(
        "bad-entry",
        `Entry ${entry.id} belongs to case ${entry.caseId}, not to ${caseId}. Send it to its own case.`,
        { id: entry.id },
      );
    }
    const kept = { entry, ...entryText(entry) };
    const other = byId.get(entry.id);
    if (other !== undefined && other.body !== kept.body) throw differs(entry.id);
    byId.set(entry.id, kept);
  }
  return byId;
}

function differs(id: string): StoreProblem {
  return new StoreProblem(
    "entry-differs",
    `Another entry is kept under the id ${id}. Entries are never changed: give the new one an id of its own.`,
    { id },
  );
}

/** As appendEntries, as a part of a larger change. */
export function appendEntriesIn(
  trx: Transaction<Tables>,
  kind: Store["kind"],
  request: AppendRequest,
): Promise<Appended> {
  return appendIn(trx, kind, request, keptById(request.caseId, request.entries));
}

/**
 * Adds entries to a case: all of them or, on any error, none. What is there already is not added again, so a delivery
 * may be repeated as often as it takes. When it returns, they are on disk.
 *
 * Errors  StoreProblem no-such-case, case-removed, case-full, entry-differs, bad-entry, disk-full, read-only,
 *         unreachable, busy.
 */
export async function appendEntries(store: Store, request: AppendRequest): Promise<Appended> {
  const batch = keptById(request.caseId, request.entries);
  return store.db.transaction().execute((trx) => appendIn(trx, store.kind, request, batch));
}

async function appendIn(
  trx: Transaction<Tables>,
  kind: Store["kind"],
  request: AppendRequest,
  batch: ReadonlyMap<string, Kept>,
): Promise<Appended> {
  const { caseId, now } = request;
  if ([...batch.values()].some(({ entry }) => entry.kind === "opened")) await makeCase(trx, request);
  const held = await lockedCase(trx, kind, caseId);
  if (request.asNew === true && held.owner_id !== request.ownerId) throw noSuchCase(caseId);
  if (batch.size === 0) return { version: held.version, added: [], known: [] };
  refuseWhenFull(caseId, batch.size, 0);
  const there = await trx
    .selectFrom("entries")
    .select(["id", "body"])
    .where("case_id", "=", caseId)
    .where("id", "in", [...batch.keys()])
    .execute();
  for (const { id, body } of there) if (batch.get(id)?.body !== body) throw differs(id);
  const known = there.map(({ id }) => id);
  const fresh = [...batch.values()].filter(({ entry }) => !known.includes(entry.id));
  if (fresh.length === 0) return { version: held.version, added: [], known };

  const version = held.version + fresh.length;
  const characters = fresh.reduce((sum, kept) => sum + kept.characters, held.characters);
  refuseWhenFull(caseId, version, characters);
  const rows = fresh.map(({ entry, body }, index) => ({
    case_id: caseId,
    seq: held.version + index + 1,
    id: entry.id,
    at: entry.at,
    kind: columnText(entry.kind),
    body,
    received_at: now,
    account_id: request.accountId,
  }));
  for (let from = 0; from < rows.length; from += ROWS) {
    await trx
      .insertInto("entries")
      .values(rows.slice(from, from + ROWS))
      .execute();
  }
  const changesHead = fresh.some(({ entry }) => HEAD_KINDS.includes(entry.kind));
  const told = toldCount(fresh.map(({ entry }) => entry));
  await trx
    .updateTable("cases")
    .set({
      version,
      characters,
      changed_at: now,
      ...(changesHead && (await foldedColumns(trx, caseId))),
      ...(told > 0 && { told_version: held.version + told }),
    })
    .where("id", "=", caseId)
    .execute();
  return { version, added: fresh.map(({ entry }) => entry.id), known };
}

/** A row for a case that is new; of two that come at once, the second waits and finds it there. */
async function makeCase(trx: Transaction<Tables>, { caseId, ownerId, now }: AppendRequest): Promise<void> {
  await trx
    .insertInto("cases")
    .values({
      id: caseId,
      owner_id: ownerId,
      opened_at: now,
      changed_at: now,
      version: 0,
      characters: FILE_HEAD,
      customer: "",
      vehicle: "",
      plate: null,
      search: "",
      invented: 0,
      closed: 0,
      removed_at: null,
      assigned_to: null,
      assigned_name: null,
      told_version: 0,
      ...NOT_RECKONED,
    })
    .onConflict((conflict) => conflict.column("id").doNothing())
    .execute();
}

/** More would make a case file that nothing can read in again. */
function refuseWhenFull(caseId: string, entries: number, characters: number): void {
  if (entries <= CASE_LIMITS.entries && characters <= CASE_LIMITS.characters) return;
  throw new StoreProblem(
    "case-full",
    `Case ${caseId} is full: ${CASE_LIMITS.entries} entries and ${CASE_LIMITS.characters} characters at most. Open a new case for what is still to come.`,
    { entries, characters },
  );
}

async function foldedColumns(
  trx: Transaction<Tables>,
  caseId: string,
): Promise<ReturnType<typeof caseColumns>> {
  const rows = await trx
    .selectFrom("entries")
    .select("body")
    .where("case_id", "=", caseId)
    .where("kind", "in", HEAD_KINDS)
    .execute();
  return caseColumns(rows.map(({ body }) => entryFromText(body)));
}
