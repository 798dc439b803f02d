import { sql } from "kysely";
import type { Entry } from "../case/entries.ts";
import { readCursor, writeCursor } from "./cursor.ts";
import { entryFromText } from "./entry-text.ts";
import { caseRemoved, noSuchCase } from "./locked-case.ts";
import { searchText } from "./plain-text.ts";
import type { CasesTable, Store } from "./tables.ts";

/** What a list of cases shows of one. */
export interface CaseHead {
  readonly id: string;
  readonly ownerId: string | null;
  /** Number of entries; grows with each. */
  readonly version: number;
  readonly openedAt: string;
  readonly changedAt: string;
  readonly customer: string;
  readonly vehicle: string;
  readonly plate: string | null;
  readonly invented: boolean;
  /** A verdict stands. */
  readonly closed: boolean;
  /** When it was removed for good; its entries are gone. */
  readonly removedAt: string | null;
}

function headOf(row: CasesTable): CaseHead {
  return {
    id: row.id,
    ownerId: row.owner_id,
    version: row.version,
    openedAt: row.opened_at,
    changedAt: row.changed_at,
    customer: row.customer,
    vehicle: row.vehicle,
    plate: row.plate,
    invented: row.invented === 1,
    closed: row.closed === 1,
    removedAt: row.removed_at,
  };
}

/** What is known of a case without its entries; undefined when it never was. A removed one says when. */
export async function caseHead(store: Store, caseId: string): Promise<CaseHead | undefined> {
  const row = await store.db.selectFrom("cases").selectAll().where("id", "=", caseId).executeTakeFirst();
  return row && headOf(row);
}

/** Versions of the cases that are there, in one look; one that is not there or was removed is left out. */
export async function caseVersions(
  store: Store,
  caseIds: readonly string[],
): Promise<ReadonlyMap<string, number>> {
  if (caseIds.length === 0) return new Map();
  const rows = await store.db
    .selectFrom("cases")
    .select(["id", "version"])
    .where("id", "in", caseIds)
    .where("removed_at", "is", null)
    .execute();
  return new Map(rows.map(({ id, version }) => [id, version]));
}

export interface EntriesPage {
  readonly version: number;
  readonly entries: readonly { readonly seq: number; readonly entry: Entry }[];
}

/**
 * Entries of a case beyond a number, in the order in which they were committed.
 *
 * Range   after: 0 for all; limit: 1 and up. There are more while the last `seq` is below `version`.
 * Errors  StoreProblem no-such-case, case-removed.
 */
export async function entriesAfter(
  store: Store,
  caseId: string,
  after: number,
  limit: number,
): Promise<EntriesPage> {
  const head = await caseHead(store, caseId);
  if (head === undefined) throw noSuchCase(caseId);
  if (head.removedAt !== null) throw caseRemoved(caseId);
  const rows = await store.db
    .selectFrom("entries")
    .select(["seq", "body"])
    .where("case_id", "=", caseId)
    .where("seq", ">", after)
    // What was added since the version was read comes with the next page.
    .where("seq", "<=", head.version)
    .orderBy("seq")
    .limit(limit)
    .execute();
  return {
    version: head.version,
    entries: rows.map(({ seq, body }) => ({ seq, entry: entryFromText(body) })),
  };
}

export interface ListRequest {
  /** Only cases of these people; left out, of everybody. */
  readonly ownerIds?: readonly string[];
  readonly closed?: boolean;
  /** Words that all stand in customer, vehicle or plate. */
  readonly text?: string;
  /** `next` of the page before. */
  readonly after?: string;
  readonly limit: number;
}

export interface CasesPage {
  readonly cases: readonly CaseHead[];
  /** Where the next page begins; null on the last one. */
  readonly next: string | null;
}

const escapeLike = (text: string): string => text.replaceAll(/[\\%_]/g, (c) => `\\${c}`);

/**
 * Cases that were not removed, the last changed first.
 *
 * Errors  StoreProblem bad-cursor.
 */
export async function listCases(store: Store, request: ListRequest): Promise<CasesPage> {
  const { ownerIds, closed, text = "", after, limit } = request;
  if (ownerIds?.length === 0) return { cases: [], next: null };
  const from = after === undefined ? undefined : readCursor(after);
  let query = store.db.selectFrom("cases").selectAll().where("removed_at", "is", null);
  if (ownerIds !== undefined) query = query.where("owner_id", "in", ownerIds);
  if (closed !== undefined) query = query.where("closed", "=", closed ? 1 : 0);
  for (const word of searchText(text).split(" ").filter(Boolean)) {
    query = query.where(sql<boolean>`${sql.ref("search")} like ${`%${escapeLike(word)}%`} escape '\\'`);
  }
  if (from !== undefined) {
    query = query.where((eb) => eb(eb.refTuple("changed_at", "id"), "<", eb.tuple(from.changedAt, from.id)));
  }
  const rows = await query
    .orderBy("changed_at", "desc")
    .orderBy("id", "desc")
    .limit(limit + 1)
    .execute();
  const cases = rows.slice(0, limit).map(headOf);
  const last = cases.at(-1);
  const more = rows.length > limit && last !== undefined;
  return { cases, next: more ? writeCursor({ changedAt: last.changedAt, id: last.id }) : null };
}
