import { CHECK_MADE } from "../training/attempt.ts";
import { PlaceId, PlaceMoment, readPlace, writePlace } from "./cursor.ts";
import { type Attempt, attemptOf } from "./exercise-attempts.ts";
import type { Store } from "./tables.ts";

/** An attempt as a board or a list shows it. */
export interface AttemptRow extends Attempt {
  readonly exerciseName: string;
  readonly course: string | null;
  /** Checks and questions made so far. */
  readonly checks: number;
}

export interface AttemptsPage {
  readonly attempts: readonly AttemptRow[];
  /** Where the next page begins; null on the last one. */
  readonly next: string | null;
}

function rows(store: Store) {
  return store.db
    .selectFrom("attempts")
    .innerJoin("exercises", "exercises.id", "attempts.exercise_id")
    .innerJoin("hand_outs", "hand_outs.id", "attempts.hand_out_id")
    .selectAll("attempts")
    .select(["exercises.name as exercise_name", "hand_outs.course as course"])
    .select((eb) =>
      eb
        .selectFrom("attempt_entries")
        .select(({ fn }) => fn.countAll<number | string>().as("n"))
        .whereRef("attempt_entries.attempt_id", "=", "attempts.id")
        .where("attempt_entries.kind", "=", CHECK_MADE)
        .as("checks"),
    )
    .orderBy("attempts.started_at", "desc")
    .orderBy("attempts.id", "desc");
}

type Row = Awaited<ReturnType<ReturnType<typeof rows>["execute"]>>[number];

function rowOf(row: Row): AttemptRow {
  return {
    ...attemptOf(row),
    exerciseName: row.exercise_name,
    course: row.course,
    checks: Number(row.checks ?? 0),
  };
}

/** Which attempts are meant; what is left out does not matter. */
export interface AttemptFilter {
  /** Those at the exercises of this instructor. */
  readonly ownerId?: string | undefined;
  readonly exerciseId?: string | undefined;
  /** Id of an account, or a name as it was typed. */
  readonly trainee?: string | undefined;
  readonly course?: string | undefined;
  readonly ended?: boolean | undefined;
  /** Begun at or after the first, before the second. ISO 8601, UTC. */
  readonly from?: string | undefined;
  readonly until?: string | undefined;
}

/**
 * Attempts, the last begun first.
 *
 * Errors  StoreProblem bad-cursor.
 */
export async function listAttempts(
  store: Store,
  request: AttemptFilter & { readonly after?: string | undefined; readonly limit: number },
): Promise<AttemptsPage> {
  const { ownerId, exerciseId, trainee, course, ended, from, until, after, limit } = request;
  let query = rows(store);
  if (ownerId !== undefined) query = query.where("exercises.owner_id", "=", ownerId);
  if (exerciseId !== undefined) query = query.where("attempts.exercise_id", "=", exerciseId);
  if (trainee !== undefined) {
    query = query.where((eb) =>
      // The name of an account may change: its attempts are found by its id.
      eb.or([
        eb("attempts.trainee_id", "=", trainee),
        eb.and([eb("attempts.trainee_id", "is", null), eb("attempts.name", "=", trainee)]),
      ]),
    );
  }
  if (course !== undefined) query = query.where("hand_outs.course", "=", course);
  if (ended !== undefined) query = query.where("attempts.ended_at", ended ? "is not" : "is", null);
  if (from !== undefined) query = query.where("attempts.started_at", ">=", from);
  if (until !== undefined) query = query.where("attempts.started_at", "<", until);
  if (after !== undefined) {
    const [startedAt = "", id = ""] = readPlace(after, [PlaceMoment, PlaceId], "the list of attempts");
    query = query.where((eb) =>
      eb(eb.refTuple("attempts.started_at", "attempts.id"), "<", eb.tuple(startedAt, id)),
    );
  }
  const found = await query.limit(limit + 1).execute();
  const attempts = found.slice(0, limit).map(rowOf);
  const last = attempts.at(-1);
  const more = found.length > limit && last !== undefined;
  return { attempts, next: more ? writePlace([last.startedAt, last.id]) : null };
}

/** The attempts of one account or one browser, the last begun first. */
export async function ownAttempts(
  store: Store,
  who: { readonly traineeId: string } | { readonly tokenHash: string },
  limit: number,
): Promise<readonly AttemptRow[]> {
  const query =
    "traineeId" in who
      ? rows(store).where("attempts.trainee_id", "=", who.traineeId)
      : rows(store).where("attempts.token_hash", "=", who.tokenHash);
  return (await query.limit(limit).execute()).map(rowOf);
}

/** One attempt as a list shows it; undefined when there is none. */
export async function attemptRow(store: Store, id: string): Promise<AttemptRow | undefined> {
  const row = await rows(store).where("attempts.id", "=", id).executeTakeFirst();
  return row && rowOf(row);
}

/** What attempts can be picked by: names of exercises, trainees and courses, each in the order of its name. */
export interface AttemptChoices {
  readonly exercises: readonly { readonly id: string; readonly name: string }[];
  readonly trainees: readonly { readonly id: string | null; readonly name: string }[];
  readonly courses: readonly string[];
}

/** What the attempts of one instructor or, without `ownerId`, of all can be picked by. */
export async function attemptChoices(
  store: Store,
  { ownerId }: Pick<AttemptFilter, "ownerId">,
): Promise<AttemptChoices> {
  const found = await store.db
    .selectFrom("attempts")
    .innerJoin("exercises", "exercises.id", "attempts.exercise_id")
    .innerJoin("hand_outs", "hand_outs.id", "attempts.hand_out_id")
    .$if(ownerId !== undefined, (query) => query.where("exercises.owner_id", "=", ownerId ?? ""))
    .select(["exercises.id as exercise_id", "exercises.name as exercise_name", "hand_outs.course as course"])
    .select(["attempts.trainee_id as trainee_id", "attempts.name as name"])
    .distinct()
    .execute();
  const exercises = new Map(found.map((row) => [row.exercise_id, row.exercise_name]));
  const trainees = new Map(
    found.map(({ trainee_id: id, name }) => [id === null ? `typed ${name}` : `account ${id}`, { id, name }]),
  );
  const courses = new Set(found.flatMap(({ course }) => course ?? []));
  return {
    exercises: [...exercises].map(([id, name]) => ({ id, name })).sort(byName),
    trainees: [...trainees.values()].sort(byName),
    courses: [...courses].sort(),
  };
}

const byName = (a: { readonly name: string }, b: { readonly name: string }): number =>
  a.name < b.name ? -1 : a.name > b.name ? 1 : 0;
