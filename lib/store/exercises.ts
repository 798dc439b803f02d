import { columnText } from "./plain-text.ts";
import { StoreProblem } from "./problem.ts";
import type { ExercisesTable, Store } from "./tables.ts";

/** What a list shows of an exercise. */
export interface ExerciseHead {
  readonly id: string;
  /** Account of the instructor; null when nobody had one. */
  readonly ownerId: string | null;
  readonly name: string;
  readonly madeAt: string;
  readonly changedAt: string;
  /** Counts its changes, from 1. */
  readonly version: number;
}

export interface Exercise extends ExerciseHead {
  /** JSON, as it was given. */
  readonly body: string;
}

/** More than any workshop has. */
const MOST_LISTED = 2000;
const HEAD = ["id", "owner_id", "name", "made_at", "changed_at", "version"] as const;

function headOf(row: Pick<ExercisesTable, (typeof HEAD)[number]>): ExerciseHead {
  return {
    id: row.id,
    ownerId: row.owner_id,
    name: row.name,
    madeAt: row.made_at,
    changedAt: row.changed_at,
    version: row.version,
  };
}

function noSuchExercise(): StoreProblem {
  return new StoreProblem("no-such-exercise", "No exercise has this id, or it is not one of yours.");
}

/** Keeps a new exercise. */
export async function keepExercise(
  store: Store,
  exercise: Pick<Exercise, "id" | "ownerId" | "name" | "body"> & { readonly now: string },
): Promise<ExerciseHead> {
  const { id, ownerId, name, body, now } = exercise;
  const row = {
    id,
    owner_id: ownerId,
    name: columnText(name),
    body,
    made_at: now,
    changed_at: now,
    version: 1,
    removed_at: null,
  };
  await store.db.insertInto("exercises").values(row).execute();
  return headOf(row);
}

/** An exercise by its id; undefined when there is none, or it was removed. */
export async function exerciseById(store: Store, id: string): Promise<Exercise | undefined> {
  const row = await store.db
    .selectFrom("exercises")
    .selectAll()
    .where("id", "=", id)
    .where("removed_at", "is", null)
    .executeTakeFirst();
  return row && { ...headOf(row), body: row.body };
}

/** Whose exercise it is, a removed one too; undefined when there never was one. */
export async function exerciseOwner(
  store: Store,
  id: string,
): Promise<{ readonly ownerId: string | null } | undefined> {
  const row = await store.db
    .selectFrom("exercises")
    .select("owner_id")
    .where("id", "=", id)
    .executeTakeFirst();
  return row && { ownerId: row.owner_id };
}

/** The exercises of one person or, with undefined, of everybody; the last changed first. */
export async function listExercises(
  store: Store,
  ownerId: string | undefined,
): Promise<readonly ExerciseHead[]> {
  let query = store.db.selectFrom("exercises").select(HEAD).where("removed_at", "is", null);
  if (ownerId !== undefined) query = query.where("owner_id", "=", ownerId);
  const rows = await query.orderBy("changed_at", "desc").orderBy("id").limit(MOST_LISTED).execute();
  return rows.map(headOf);
}

/**
 * Changes an exercise that is at one of `versions`; left out, at any. What was handed out of it stays as it was.
 *
 * Errors  StoreProblem no-such-exercise, changed-meanwhile.
 */
export async function changeExercise(
  store: Store,
  id: string,
  versions: readonly number[] | undefined,
  { name, body }: Pick<Exercise, "name" | "body">,
  now: string,
): Promise<ExerciseHead> {
  let query = store.db
    .updateTable("exercises")
    .set((eb) => ({ name: columnText(name), body, changed_at: now, version: eb("version", "+", 1) }))
    .where("id", "=", id)
    .where("removed_at", "is", null);
  if (versions !== undefined) query = query.where("version", "in", versions.length === 0 ? [0] : versions);
  const row = await query.returning(HEAD).executeTakeFirst();
  if (row !== undefined) return headOf(row);
  if ((await exerciseById(store, id)) === undefined) throw noSuchExercise();
  throw new StoreProblem(
    "changed-meanwhile",
    "The exercise was changed meanwhile. Read it again, and change it from there.",
  );
}

/**
 * Takes an exercise out of the lists and ends what was handed out of it; attempts stay, as they are somebody's work.
 *
 * Errors  StoreProblem no-such-exercise.
 */
export function removeExercise(store: Store, id: string, now: string): Promise<void> {
  return store.db.transaction().execute(async (trx) => {
    const { numUpdatedRows } = await trx
      .updateTable("exercises")
      .set({ removed_at: now })
      .where("id", "=", id)
      .where("removed_at", "is", null)
      .executeTakeFirst();
    if (numUpdatedRows === 0n) throw noSuchExercise();
    await trx
      .updateTable("hand_outs")
      .set({ revoked_at: now })
      .where("exercise_id", "=", id)
      .where("revoked_at", "is", null)
      .execute();
  });
}
