import { NOT_RECKONED } from "./case-columns.ts";
import { lockedCase } from "./locked-case.ts";
import type { Store } from "./tables.ts";

/**
 * Removes a case for good: its entries, its photos and what the list showed of it. Its id stays as a mark, so that a device that
 * still holds the case cannot bring it back.
 *
 * Errors  StoreProblem no-such-case, case-removed.
 */
export async function removeCase(store: Store, caseId: string, now: string): Promise<void> {
  await store.db.transaction().execute(async (trx) => {
    await lockedCase(trx, store.kind, caseId);
    await trx.deleteFrom("entries").where("case_id", "=", caseId).execute();
    await trx.deleteFrom("photos").where("case_id", "=", caseId).execute();
    await trx.deleteFrom("links").where("target", "=", caseId).execute();
    await trx
      .updateTable("cases")
      .set({
        owner_id: null,
        changed_at: now,
        characters: 0,
        customer: "",
        vehicle: "",
        plate: null,
        search: "",
        removed_at: now,
        assigned_to: null,
        assigned_name: null,
        told_version: 0,
        ...NOT_RECKONED,
      })
      .where("id", "=", caseId)
      .execute();
  });
}
