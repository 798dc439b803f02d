import type { Entry } from "../case/entries.ts";
import type { ArchivedAttempt } from "./archive-form.ts";
import { badArchive, type OpenArchive } from "./archive-read.ts";
import { entryText } from "./entry-text.ts";
import { columnText } from "./plain-text.ts";
import type { AttemptEntriesTable, AttemptsTable, Tables } from "./tables.ts";

type Table = "exercises" | "hand_outs" | "attempts" | "attempt_entries";

/** What taking exercises in needs of its caller. */
export interface ExerciseRestoring {
  readonly insert: <T extends Table>(table: T, rows: readonly Tables[T][]) => Promise<void>;
  /** Who a person of the archive is here. */
  readonly rename: (id: string | null) => string | null;
  /** An entry from data of unknown form. Errors  StoreProblem bad-archive. */
  readonly readEntry: (value: unknown, caseId: string, where: string) => Entry;
}

/**
 * Takes exercises, hand-outs and attempts in, and gives how many there were.
 *
 * Errors  StoreProblem bad-archive.
 */
export async function restoreExercises(
  archive: OpenArchive,
  { insert, rename, readEntry }: ExerciseRestoring,
): Promise<{ exercises: number; handOuts: number; attempts: number }> {
  const done = { exercises: 0, handOuts: 0, attempts: 0 };
  for (const some of archive.exercises()) {
    await insert(
      "exercises",
      some.map((row) => ({ ...row, owner_id: rename(row.owner_id) })),
    );
    done.exercises += some.length;
  }
  for (const some of archive.handOuts()) {
    await insert(
      "hand_outs",
      some.map((row) => ({ ...row, made_by: rename(row.made_by) })),
    );
    done.handOuts += some.length;
  }
  for (const some of archive.attempts()) {
    const rows = some.map((one) => rowsOf(one, rename, readEntry));
    await insert(
      "attempts",
      rows.map(({ head }) => head),
    );
    await insert(
      "attempt_entries",
      rows.flatMap(({ entries }) => entries),
    );
    done.attempts += some.length;
  }
  return done;
}

function rowsOf(
  { entries, ...head }: ArchivedAttempt,
  rename: ExerciseRestoring["rename"],
  readEntry: ExerciseRestoring["readEntry"],
): { readonly head: AttemptsTable; readonly entries: AttemptEntriesTable[] } {
  const where = `attempt ${head.id}`;
  if ((head.ended_at === null) !== (head.score === null)) {
    throw badArchive(`${where} has ended without a score, or has one without its end`);
  }
  return {
    head: { ...head, trainee_id: rename(head.trainee_id), version: entries.length },
    entries: entries.map(({ receivedAt, entry: value }, i) => {
      const entry = readEntry(value, head.id, `entry ${i + 1} of ${where}`);
      return {
        attempt_id: head.id,
        seq: i + 1,
        id: entry.id,
        at: entry.at,
        kind: columnText(entry.kind),
        body: entryText(entry).body,
        received_at: receivedAt,
      };
    }),
  };
}
