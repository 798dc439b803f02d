import type { Transaction } from "kysely";
import { StoreProblem } from "./problem.ts";
import type { CasesTable, StoreKind, Tables } from "./tables.ts";

/** The case of that id is not there, in words. */
export function noSuchCase(caseId: string): StoreProblem {
  return new StoreProblem(
    "no-such-case",
    `There is no case ${caseId}. The first entries of a case hold its opening.`,
    { caseId },
  );
}

/** The case of that id was there, in words. */
export function caseRemoved(caseId: string): StoreProblem {
  return new StoreProblem("case-removed", `Case ${caseId} was removed for good.`, { caseId });
}

/**
 * A case's row, held until the transaction ends: whoever adds to the same case next waits, so its entries are
 * numbered in the order in which they are committed.
 *
 * Errors  StoreProblem no-such-case, case-removed.
 */
export async function lockedCase(
  trx: Transaction<Tables>,
  kind: StoreKind,
  caseId: string,
): Promise<Pick<CasesTable, "version" | "characters" | "owner_id">> {
  const row = await trx
    .selectFrom("cases")
    .select(["version", "characters", "owner_id", "removed_at"])
    .where("id", "=", caseId)
    // In the embedded database the whole transaction is the lock.
    .$if(kind === "postgres", (query) => query.forUpdate())
    .executeTakeFirst();
  if (row === undefined) throw noSuchCase(caseId);
  if (row.removed_at !== null) throw caseRemoved(caseId);
  return row;
}
