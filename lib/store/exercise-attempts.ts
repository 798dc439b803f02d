import type { Transaction } from "kysely";
import type { Entry } from "../case/entries.ts";
import { entryFromText, entryText } from "./entry-text.ts";
import { columnText } from "./plain-text.ts";
import { StoreProblem } from "./problem.ts";
import type { AttemptsTable, Store, StoreKind, Tables } from "./tables.ts";

/** One trainee's go at what was handed out. */
export interface Attempt {
  readonly id: string;
  readonly handOutId: string;
  readonly exerciseId: string;
  /** Account; null for somebody without one. */
  readonly traineeId: string | null;
  readonly name: string;
  /** `hashOfToken` of the browser's token; null with an account. */
  readonly tokenHash: string | null;
  readonly startedAt: string;
  readonly endedAt: string | null;
  /** JSON, once it has ended. */
  readonly score: string | null;
  /** Number of its entries. */
  readonly version: number;
}

/** Entries of one attempt: far more than a ramp sees in a day. */
const MOST_ENTRIES = 3000;

export function attemptOf(row: AttemptsTable): Attempt {
  return {
    id: row.id,
    handOutId: row.hand_out_id,
    exerciseId: row.exercise_id,
    traineeId: row.trainee_id,
    name: row.name,
    tokenHash: row.token_hash,
    startedAt: row.started_at,
    endedAt: row.ended_at,
    score: row.score,
    version: row.version,
  };
}

function noSuchAttempt(): StoreProblem {
  return new StoreProblem("no-such-attempt", "No attempt has this id, or it is not one of yours.");
}

/**
 * Begins an attempt under an id that was made on the device; the same one again changes nothing.
 *
 * Errors  StoreProblem no-such-attempt: the id is somebody else's; attempt-over: the hand-out has seen `most` attempts.
 */
export function startAttempt(
  store: Store,
  attempt: Pick<Attempt, "id" | "handOutId" | "exerciseId" | "traineeId" | "name" | "tokenHash">,
  entries: readonly Entry[],
  { now, most }: { readonly now: string; readonly most: number },
): Promise<Attempt> {
  return store.db.transaction().execute(async (trx) => {
    const there = await trx
      .selectFrom("attempts")
      .selectAll()
      .where("id", "=", attempt.id)
      .executeTakeFirst();
    if (there !== undefined) {
      const same =
        there.hand_out_id === attempt.handOutId &&
        there.trainee_id === attempt.traineeId &&
        there.token_hash === attempt.tokenHash;
      if (!same) throw noSuchAttempt();
      return attemptOf(there);
    }
    const { n } = await trx
      .selectFrom("attempts")
      .select(({ fn }) => fn.countAll<number | string>().as("n"))
      .where("hand_out_id", "=", attempt.handOutId)
      .executeTakeFirstOrThrow();
    if (Number(n) >= most) {
      throw new StoreProblem(
        "attempt-over",
        `It was begun ${most} times already. Ask the instructor to hand the exercise out anew.`,
      );
    }
    const row: AttemptsTable = {
      id: attempt.id,
      hand_out_id: attempt.handOutId,
      exercise_id: attempt.exerciseId,
      trainee_id: attempt.traineeId,
      name: columnText(attempt.name),
      token_hash: attempt.tokenHash,
      started_at: now,
      ended_at: null,
      score: null,
      version: entries.length,
    };
    const made = await trx
      .insertInto("attempts")
      .values(row)
      .onConflict((conflict) => conflict.column("id").doNothing())
      .returning("id")
      .executeTakeFirst();
    // Of two that came at once, the first made it.
    if (made === undefined)
      throw new StoreProblem("changed-meanwhile", "It is being begun already. Try again.");
    await insertEntries(trx, attempt.id, 0, entries, now);
    return attemptOf(row);
  });
}

/** An attempt by its id; undefined when there is none. */
export async function attemptById(store: Store, id: string): Promise<Attempt | undefined> {
  const row = await store.db.selectFrom("attempts").selectAll().where("id", "=", id).executeTakeFirst();
  return row && attemptOf(row);
}

/** Every entry of an attempt, in the order in which they were kept. */
export async function attemptEntries(store: Pick<Store, "db">, id: string): Promise<readonly Entry[]> {
  const rows = await store.db
    .selectFrom("attempt_entries")
    .select("body")
    .where("attempt_id", "=", id)
    .orderBy("seq")
    .execute();
  return rows.map(({ body }) => entryFromText(body));
}

/** What becomes of an attempt. */
export interface AttemptChange {
  /** New entries; those that are there already, the same, are passed over. */
  readonly add: readonly Entry[];
  /** It ends, and this is how it went. */
  readonly score?: string;
}

/**
 * Changes an attempt under the lock of its row, by what is in it then; gives all its entries afterwards.
 *
 * Errors  StoreProblem no-such-attempt, attempt-over, entry-differs; what `change` throws: nothing was kept then.
 */
export function changeAttempt(
  store: Store,
  id: string,
  now: string,
  change: (attempt: Attempt, entries: readonly Entry[]) => AttemptChange,
): Promise<{ readonly attempt: Attempt; readonly entries: readonly Entry[] }> {
  return store.db.transaction().execute(async (trx) => {
    const attempt = await lockedAttempt(trx, store.kind, id);
    const there = await attemptEntries({ db: trx }, id);
    const { add, score } = change(attempt, there);
    const byId = new Map(there.map((entry) => [entry.id, entryText(entry).body]));
    const fresh = add.filter((entry) => {
      const known = byId.get(entry.id);
      const { body } = entryText(entry);
      if (known !== undefined && known !== body) {
        throw new StoreProblem(
          "entry-differs",
          `Another entry is kept under the id ${entry.id}. Entries are never changed: give the new one an id of its own.`,
          { id: entry.id },
        );
      }
      byId.set(entry.id, body);
      return known === undefined;
    });
    if (fresh.length === 0 && score === undefined) return { attempt, entries: there };
    const version = attempt.version + fresh.length;
    if (attempt.endedAt !== null || version > MOST_ENTRIES) {
      throw new StoreProblem(
        "attempt-over",
        attempt.endedAt === null
          ? `The attempt holds ${MOST_ENTRIES} entries and can take no more. Give your verdict.`
          : "The attempt has ended with its verdict; nothing can be added.",
      );
    }
    await insertEntries(trx, id, attempt.version, fresh, now);
    const ended = score === undefined ? {} : { score, endedAt: now };
    await trx
      .updateTable("attempts")
      .set({ version, ...(score !== undefined && { score, ended_at: now }) })
      .where("id", "=", id)
      .execute();
    return { attempt: { ...attempt, version, ...ended }, entries: [...there, ...fresh] };
  });
}

async function lockedAttempt(trx: Transaction<Tables>, kind: StoreKind, id: string): Promise<Attempt> {
  const row = await trx
    .selectFrom("attempts")
    .selectAll()
    .where("id", "=", id)
    // In the embedded database the whole transaction is the lock.
    .$if(kind === "postgres", (query) => query.forUpdate())
    .executeTakeFirst();
  if (row === undefined) throw noSuchAttempt();
  return attemptOf(row);
}

async function insertEntries(
  trx: Transaction<Tables>,
  attemptId: string,
  after: number,
  entries: readonly Entry[],
  now: string,
): Promise<void> {
  if (entries.length === 0) return;
  await trx
    .insertInto("attempt_entries")
    .values(
      entries.map((entry, k) => ({
        attempt_id: attemptId,
        seq: after + k + 1,
        id: entry.id,
        at: entry.at,
        kind: columnText(entry.kind),
        body: entryText(entry).body,
        received_at: now,
      })),
    )
    .execute();
}
