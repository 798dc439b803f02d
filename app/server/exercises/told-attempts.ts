import type { AttemptRow } from "../../../lib/store/index.ts";
import { type Statement, statementsOf, type ToldAttempt } from "../../../lib/training/index.ts";
import { uuidOfText } from "../records/uuid-of-text.ts";
import { resultOfRow } from "./rows.ts";

/** An attempt without the score's text, as the board and statements take it. */
export function toldAttempt(row: AttemptRow): ToldAttempt {
  return {
    id: row.id,
    exercise: { id: row.exerciseId, name: row.exerciseName },
    course: row.course,
    trainee: { id: row.traineeId, name: row.name },
    startedAt: row.startedAt,
    endedAt: row.endedAt,
    result: resultOfRow(row),
  };
}

/** The statements of attempts, each attempt's together. */
export const statementsOfRows = (rows: readonly AttemptRow[], site: string): Statement[] =>
  rows.flatMap((row) => statementsOf(toldAttempt(row), { site, uuidOf: uuidOfText }));
