import { sql } from "kysely";
import { CASE_ORDERS, type CaseOrder, readCursor, writeCursor } from "./cursor.ts";
import { searchText } from "./plain-text.ts";
import { type CaseHead, headOf } from "./read-cases.ts";
import type { Flag, Store } from "./tables.ts";

/** Who has a case. */
export type Holder = "nobody" | { readonly account: string } | { readonly name: string };

export interface ListRequest {
  /** Only cases of these people; left out, of everybody. */
  readonly ownerIds?: readonly string[];
  readonly closed?: boolean;
  /** Words that all stand in customer, vehicle or plate. */
  readonly text?: string;
  /** Open cases of one of these levels; "nothing-told" and "unknown" are levels here. */
  readonly levels?: readonly string[];
  readonly who?: Holder;
  readonly invented?: boolean;
  /** "changed" by default. */
  readonly order?: CaseOrder;
  /** `next` of the page before, which was of the same order. */
  readonly after?: string;
  readonly limit: number;
}

export interface CasesPage {
  readonly cases: readonly CaseHead[];
  /** Where the next page begins; null on the last one. */
  readonly next: string | null;
}

const escapeLike = (text: string): string => text.replaceAll(/[\\%_]/g, (c) => `\\${c}`);

/** What stands in the column of levels for the two that are none. */
const NO_LEVELS: Readonly<Record<string, string | null>> = { "nothing-told": "", unknown: null };

/**
 * Cases that were not removed. Each page begins behind the last case of the page before, wherever cases have moved meanwhile:
 * a case that did not change its place is neither left out nor repeated.
 *
 * Errors  StoreProblem bad-cursor.
 */
export async function listCases(store: Store, request: ListRequest): Promise<CasesPage> {
  const { ownerIds, order = "changed", after, limit } = request;
  if (ownerIds?.length === 0) return { cases: [], next: null };
  const { by, direction } = CASE_ORDERS[order];
  let query = picked(store, request);
  if (after !== undefined) {
    const place = readCursor(order, after);
    // SQLite finds the place in its index only when no column is asked for twice.
    const from = by[0] === "closed" && place[0] === onlyClosed(request) ? 1 : 0;
    const columns = by.slice(from).map((column) => sql.ref(column));
    const beyond = sql.raw(direction === "asc" ? ">" : "<");
    query = query.where(sql<boolean>`(${sql.join(columns)}) ${beyond} (${sql.join(place.slice(from))})`);
  }
  for (const column of by) query = query.orderBy(column, direction);
  const rows = await query.limit(limit + 1).execute();
  const shown = rows.slice(0, limit);
  const last = shown.at(-1);
  return {
    cases: shown.map(headOf),
    next: rows.length > limit && last !== undefined ? writeCursor(order, last) : null,
  };
}

/** What stands in the column `closed` of every case that is asked for; undefined: either. */
function onlyClosed({ closed, levels }: ListRequest): Flag | undefined {
  if (levels !== undefined) return 0;
  return closed === undefined ? undefined : closed ? 1 : 0;
}

function picked(store: Store, { ownerIds, closed, text = "", levels, who, invented }: ListRequest) {
  let query = store.db.selectFrom("cases").selectAll().where("removed_at", "is", null);
  if (ownerIds !== undefined) query = query.where("owner_id", "in", ownerIds);
  if (closed !== undefined) query = query.where("closed", "=", closed ? 1 : 0);
  if (invented !== undefined) query = query.where("invented", "=", invented ? 1 : 0);
  if (levels !== undefined) {
    const wanted = levels.map((level) => (level in NO_LEVELS ? (NO_LEVELS[level] ?? null) : level));
    query = query
      .where("closed", "=", 0)
      .where((eb) =>
        eb.or([
          ...wanted.filter((level) => level !== null).map((level) => eb("level", "=", level)),
          ...(wanted.includes(null) ? [eb("level", "is", null)] : []),
        ]),
      );
  }
  if (who === "nobody") query = query.where("assigned_name", "is", null);
  else if (who !== undefined) {
    query =
      "account" in who
        ? query.where("assigned_to", "=", who.account)
        : query.where("assigned_name", "=", who.name);
  }
  for (const word of searchText(text).split(" ").filter(Boolean)) {
    query = query.where(sql<boolean>`${sql.ref("search")} like ${`%${escapeLike(word)}%`} escape '\\'`);
  }
  return query;
}
