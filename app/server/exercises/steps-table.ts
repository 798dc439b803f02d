import { csvTable } from "../../../lib/case/csv-table.ts";
import type { AttemptRow } from "../../../lib/store/index.ts";
import { resultOfRow, tenths, yesNo } from "./rows.ts";

const COLUMNS = [
  "attempt",
  "exercise",
  "course",
  "trainee",
  "begun",
  "step",
  "check",
  "minutes",
  "of these for the set-up",
  "minutes lost",
  "best choice then",
  "known already",
  "after the proof",
  "unsafe",
  "cautions not read",
] as const;

/** The checks and questions of attempts that have ended as CSV text (RFC 4180), one line each, in the order of the attempt. */
export function stepsCsv(rows: readonly AttemptRow[]): string {
  const lines = rows.flatMap((row) => {
    const head = [row.id, row.exerciseName, row.course ?? "", row.name, row.startedAt];
    return (resultOfRow(row)?.steps ?? []).map((step, k) => [
      ...head,
      k + 1,
      step.check,
      tenths(step.minutes),
      tenths(step.setUpMinutes),
      tenths(step.lost),
      step.best ?? "",
      yesNo(step.repeated),
      yesNo(step.afterProof),
      yesNo(step.unsafe),
      yesNo(step.cautionSkipped),
    ]);
  });
  return csvTable([COLUMNS, ...lines]);
}
