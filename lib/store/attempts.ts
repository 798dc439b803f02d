import { randomUUID } from "node:crypto";
import { sql } from "kysely";
import type { Store } from "./tables.ts";

const OLDEST_KEPT_MS = 86_400_000;

export interface AttemptRequest {
  /** What is counted; no names or addresses of people in plain text where a hash will do. */
  readonly key: string;
  /** Milliseconds since 1970. */
  readonly now: number;
  readonly windowMs: number;
  /** Most attempts in one window. */
  readonly most: number;
}

/**
 * Counts an attempt before it is made, in one statement, so that many at once or on several instances are all counted.
 *
 * Returns 0 when it may be made, else the milliseconds until it may.
 */
export async function takeAttempt(store: Store, request: AttemptRequest): Promise<number> {
  const { key, now, windowMs, most } = request;
  const over = sql<boolean>`"rateLimit"."lastRequest" <= ${now - windowMs}`;
  const row = await store.db
    .insertInto("rateLimit")
    // An id of its own each time: of two unique columns only one can be named below, and the other would fail two at once.
    .values({ id: randomUUID(), key, count: 1, lastRequest: now })
    .onConflict((conflict) =>
      conflict.column("key").doUpdateSet({
        count: sql`case when ${over} then 1 else "rateLimit"."count" + 1 end`,
        lastRequest: sql`case when ${over} then ${now} else "rateLimit"."lastRequest" end`,
      }),
    )
    .returning(["count", "lastRequest"])
    .executeTakeFirstOrThrow();
  if (row.count === 1) await forgetOldAttempts(store, now);
  return row.count <= most ? 0 : Math.max(1, row.lastRequest + windowMs - now);
}

/** Attempts of this kind start from nothing again: the last one was right. */
export async function forgetAttempts(store: Store, key: string): Promise<void> {
  await store.db.deleteFrom("rateLimit").where("key", "=", key).execute();
}

async function forgetOldAttempts(store: Store, now: number): Promise<void> {
  await store.db
    .deleteFrom("rateLimit")
    .where("lastRequest", "<", now - OLDEST_KEPT_MS)
    .execute();
}
