import { sql } from "kysely";
import { type Urgency, urgencyRank, WEIGHED_KINDS } from "../case/case-urgency.ts";
import type { Entry } from "../case/entries.ts";
import type { Advice } from "../knowledge/schema/advice.ts";
import { NOT_RECKONED } from "./case-columns.ts";
import { entryFromText } from "./entry-text.ts";
import { columnText } from "./plain-text.ts";
import type { CasesTable, Store } from "./tables.ts";

/** Longest reason that is kept. */
const LONGEST_PROBLEM = 300;

/** An open case whose urgency is older than what was told of it. */
export interface CasesToReckon {
  /** Which end of the line: those that wait longest, or those that changed last. */
  readonly from: "oldest" | "newest";
  readonly limit: number;
}

/**
 * Ids of open cases whose urgency is to be reckoned. What is in the conditions stands there word for word: the index of such
 * cases is found by it.
 */
export async function casesToReckon(store: Store, { from, limit }: CasesToReckon): Promise<string[]> {
  const direction = from === "oldest" ? "asc" : "desc";
  const rows = await store.db
    .selectFrom("cases")
    .select("id")
    .where(sql<boolean>`closed = 0 and removed_at is null and told_version > reckoned_version`)
    .orderBy("changed_at", direction)
    .orderBy("id", direction)
    .limit(limit)
    .execute();
  return rows.map(({ id }) => id);
}

/** How a case is reckoned. */
export interface Reckoning {
  /** The urgency of a case with these entries of `WEIGHED_KINDS`; throws when it cannot be weighed. */
  readonly urgency: (entries: readonly Entry[]) => Urgency | Promise<Urgency>;
  /** Levels of the newest advice, by which cases are ordered. */
  readonly levels: Advice["levels"];
  /** Awaited after each case: leaves the processor to others. */
  readonly rest?: () => Promise<void>;
}

/** What came of it, by case. */
export interface Reckoned {
  readonly id: string;
  /** Undefined: it could not be weighed; `problem` says why. */
  readonly urgency: Urgency | undefined;
  readonly problem: string | undefined;
}

/**
 * Reckons the urgency of these cases and writes it into their rows, whatever else is being written. Cases that others have
 * reckoned meanwhile are passed over, and an older result never takes the place of a newer one: several processes may work on
 * one database. A case that cannot be weighed is marked with the reason, and the others go on.
 *
 * Errors  StoreProblem of the database.
 */
export async function reckonCases(
  store: Store,
  ids: readonly string[],
  reckoning: Reckoning,
): Promise<readonly Reckoned[]> {
  const done: (Reckoned & { readonly version: number })[] = [];
  for (const id of ids) {
    const version = await versionToReckon(store, id);
    if (version === undefined) continue;
    const entries = await weighedEntries(store, id);
    done.push({ id, version, ...(await urgencyOf(entries, reckoning)) });
    await reckoning.rest?.();
  }
  if (done.length === 0) return [];
  // In one order everywhere: of two processes with the same cases, one waits for the other and not both.
  done.sort((a, b) => (a.id < b.id ? -1 : 1));
  await store.db.transaction().execute(async (trx) => {
    for (const { id, version, urgency, problem } of done) {
      await trx
        .updateTable("cases")
        .set({ ...columnsOf(urgency, problem, reckoning.levels), reckoned_version: version })
        .where("id", "=", id)
        .where("reckoned_version", "<", version)
        .where("removed_at", "is", null)
        .execute();
    }
  });
  return done.map(({ id, urgency, problem }) => ({ id, urgency, problem }));
}

/** The version to be reckoned, read before the entries: what is added after it makes the case wait again. */
async function versionToReckon(store: Store, id: string): Promise<number | undefined> {
  const row = await store.db
    .selectFrom("cases")
    .select("told_version")
    .where("id", "=", id)
    .where(sql<boolean>`closed = 0 and removed_at is null and told_version > reckoned_version`)
    .executeTakeFirst();
  return row?.told_version;
}

async function weighedEntries(store: Store, id: string): Promise<Entry[]> {
  const rows = await store.db
    .selectFrom("entries")
    .select("body")
    .where("case_id", "=", id)
    .where("kind", "in", WEIGHED_KINDS)
    .execute();
  return rows.map(({ body }) => entryFromText(body));
}

async function urgencyOf(
  entries: readonly Entry[],
  reckoning: Reckoning,
): Promise<Pick<Reckoned, "urgency" | "problem">> {
  try {
    return { urgency: await reckoning.urgency(entries), problem: undefined };
  } catch (error) {
    const problem = error instanceof Error ? error.message : String(error);
    return { urgency: undefined, problem: problem.slice(0, LONGEST_PROBLEM) };
  }
}

function columnsOf(
  urgency: Urgency | undefined,
  problem: string | undefined,
  levels: Advice["levels"],
): Pick<CasesTable, "urgency" | "level" | "danger" | "reckon_problem"> {
  return {
    urgency: urgencyRank(urgency, levels),
    level: urgency === undefined ? null : urgency.is === "level" ? urgency.level : "",
    danger: urgency?.is === "level" ? urgency.danger : null,
    reckon_problem: problem === undefined ? null : columnText(problem),
  };
}

/**
 * Lets every open case be reckoned again: the reasoning or the advice is another one than before. What was last known stands
 * in the lists until then.
 *
 * Shape   which: "all", or those that could not be weighed.
 */
export async function reckonEverythingAnew(store: Store, which: "all" | "failed"): Promise<void> {
  await store.db
    .updateTable("cases")
    .set({ reckoned_version: NOT_RECKONED.reckoned_version })
    .where("reckoned_version", ">", 0)
    .$if(which === "failed", (query) => query.where("level", "is", null))
    .execute();
}
