import type { Entry } from "../case/entries.ts";
import { entryFromText } from "./entry-text.ts";
import { caseRemoved, noSuchCase } from "./locked-case.ts";
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
  /** Who has it; null: nobody. */
  readonly assigned: { readonly name: string; readonly account: string | null } | null;
  readonly urgency: HeadUrgency;
}

/** How urgent a case is, as it was last reckoned. */
export interface HeadUrgency {
  /** "unknown": not reckoned yet, or it could not be. */
  readonly is: "level" | "nothing-told" | "unknown";
  /** Id of the level; null unless there is one. */
  readonly level: string | null;
  readonly danger: number | null;
  /** False while it is still to be reckoned with the newest answers. */
  readonly current: boolean;
  /** Why it could not be reckoned. */
  readonly problem: string | null;
}

/** A case as lists show it, from its row. */
export function headOf(row: CasesTable): CaseHead {
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
    assigned: row.assigned_name === null ? null : { name: row.assigned_name, account: row.assigned_to },
    urgency: {
      is: row.level === null ? "unknown" : row.level === "" ? "nothing-told" : "level",
      level: row.level === "" ? null : row.level,
      danger: row.danger,
      current: row.reckoned_version >= row.told_version,
      problem: row.reckon_problem,
    },
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

/** Which of these ids a case has entries under. */
export async function idsThatAreThere(
  store: Store,
  caseId: string,
  ids: readonly string[],
): Promise<ReadonlySet<string>> {
  if (ids.length === 0) return new Set();
  const rows = await store.db
    .selectFrom("entries")
    .select("id")
    .where("case_id", "=", caseId)
    .where("id", "in", ids)
    .execute();
  return new Set(rows.map(({ id }) => id));
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
