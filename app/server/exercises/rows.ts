import { csvTable } from "../../../lib/case/csv-table.ts";
import type { AttemptRow, Exercise, ExerciseHead } from "../../../lib/store/index.ts";
import { type KeptResult, readResult } from "../../../lib/training/index.ts";

/** The head of an exercise as routes give it. */
export function exerciseHead({ id, ownerId, name, madeAt, changedAt, version }: ExerciseHead | Exercise) {
  return { id, ownerId, name, madeAt, changedAt, version };
}

/** How an attempt ended; undefined while it goes on. */
export const resultOfRow = ({ score }: AttemptRow): KeptResult | undefined =>
  score === null ? undefined : readResult(score);

/** An attempt as a board, a list and a debrief show it. */
export function attemptJson(row: AttemptRow) {
  const result = resultOfRow(row);
  return {
    id: row.id,
    exercise: { id: row.exerciseId, name: row.exerciseName },
    handOutId: row.handOutId,
    course: row.course,
    trainee: { id: row.traineeId, name: row.name },
    startedAt: row.startedAt,
    endedAt: row.endedAt,
    checks: row.checks,
    score: result?.score ?? null,
    confidence: result?.verdict?.confidence ?? null,
  };
}

const COLUMNS = [
  "exercise",
  "course",
  "trainee",
  "begun",
  "ended",
  "checks",
  "right",
  "right part",
  "complete",
  "minutes",
  "best minutes",
  "minutes lost",
  "minutes after proof",
  "confidence",
  "Brier score",
  "named",
  "wrong parts",
  "unsafe checks",
  "cautions not read",
  "jumped to the verdict",
] as const;

export const yesNo = (value: boolean | undefined): string =>
  value === undefined ? "" : value ? "yes" : "no";
export const tenths = (value: number): number => Math.round(value * 10) / 10;

/** Attempts as CSV text (RFC 4180), one line each; minutes to a tenth, what is not known yet is empty. */
export function attemptsCsv(rows: readonly AttemptRow[]): string {
  const lines = rows.map((row) => {
    const head = [row.exerciseName, row.course ?? "", row.name, row.startedAt, row.endedAt ?? "", row.checks];
    const result = resultOfRow(row);
    if (result === undefined) return [...head, ...COLUMNS.slice(head.length).map(() => "")];
    const { score, verdict } = result;
    return [
      ...head,
      yesNo(score.right),
      yesNo(score.rightPart),
      yesNo(score.complete),
      tenths(score.minutes),
      tenths(score.bestMinutes),
      tenths(score.lostMinutes),
      tenths(score.afterProof),
      verdict?.confidence ?? "",
      score.brier === undefined ? "" : Math.round(score.brier * 1e4) / 1e4,
      verdict?.suspects.join(" ") ?? "",
      score.wrongParts.join(" "),
      score.unsafe.join(" "),
      score.cautionsSkipped.join(" "),
      yesNo(score.jumped),
    ];
  });
  return csvTable([COLUMNS, ...lines]);
}
