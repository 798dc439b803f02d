import { columnText } from "./plain-text.ts";
import type { HandOutsTable, Store } from "./tables.ts";
import { hashOfToken } from "./token-hash.ts";

/** An exercise that was handed out. */
export interface HandOut {
  readonly id: string;
  readonly exerciseId: string;
  /** Short, to be typed; tries at it have to be counted by the caller. */
  readonly code: string;
  /** Name of the course that it belongs to. */
  readonly course: string | null;
  readonly madeBy: string | null;
  readonly madeAt: string;
  readonly expiresAt: string;
  readonly revokedAt: string | null;
  /** The exercise as it was then, as JSON. */
  readonly body: string;
}

function handOutOf(row: HandOutsTable): HandOut {
  return {
    id: row.id,
    exerciseId: row.exercise_id,
    code: row.code,
    course: row.course,
    madeBy: row.made_by,
    madeAt: row.made_at,
    expiresAt: row.expires_at,
    revokedAt: row.revoked_at,
    body: row.body,
  };
}

/**
 * Keeps a hand-out; false when its code is taken: draw another one.
 *
 * Range   token: at least 128 bits of randomness, made by the caller, shown once.
 */
export async function makeHandOut(
  store: Store,
  handOut: Omit<HandOut, "revokedAt"> & { readonly token: string },
): Promise<boolean> {
  const made = await store.db
    .insertInto("hand_outs")
    .values({
      id: handOut.id,
      exercise_id: handOut.exerciseId,
      body: handOut.body,
      code: handOut.code,
      token_hash: hashOfToken(handOut.token),
      course: handOut.course === null ? null : columnText(handOut.course),
      made_by: handOut.madeBy,
      made_at: handOut.madeAt,
      expires_at: handOut.expiresAt,
      revoked_at: null,
    })
    .onConflict((conflict) => conflict.column("code").doNothing())
    .returning("id")
    .executeTakeFirst();
  return made !== undefined;
}

/** The hand-out that a code or a token opens; undefined when there is none, it has run out or was ended: all look alike. */
export async function openHandOut(
  store: Store,
  by: { readonly code: string } | { readonly token: string },
  now: string,
): Promise<HandOut | undefined> {
  const query = store.db
    .selectFrom("hand_outs")
    .selectAll()
    .where("expires_at", ">", now)
    .where("revoked_at", "is", null);
  const row = await ("code" in by
    ? query.where("code", "=", by.code)
    : query.where("token_hash", "=", hashOfToken(by.token))
  ).executeTakeFirst();
  return row && handOutOf(row);
}

/** A hand-out by its id, expired and ended ones too. */
export async function handOutById(store: Store, id: string): Promise<HandOut | undefined> {
  const row = await store.db.selectFrom("hand_outs").selectAll().where("id", "=", id).executeTakeFirst();
  return row && handOutOf(row);
}

/** What was handed out of one exercise, the newest first. */
export async function listHandOuts(store: Store, exerciseId: string): Promise<readonly HandOut[]> {
  const rows = await store.db
    .selectFrom("hand_outs")
    .selectAll()
    .where("exercise_id", "=", exerciseId)
    .orderBy("made_at", "desc")
    .orderBy("id")
    .execute();
  return rows.map(handOutOf);
}

/** Nobody begins by it any more; attempts that were begun go on. */
export async function revokeHandOut(store: Store, id: string, now: string): Promise<void> {
  await store.db
    .updateTable("hand_outs")
    .set({ revoked_at: now })
    .where("id", "=", id)
    .where("revoked_at", "is", null)
    .execute();
}
