import { csvTable } from "./csv-table.ts";
import type { Entry, EntryOf } from "./entries.ts";
import { foldCase } from "./fold.ts";

const COLUMNS = [
  "at",
  "by",
  "check",
  "finding",
  "result",
  "level",
  "value",
  "circle mm",
  "words",
  "taken back",
] as const;

type Row = Record<(typeof COLUMNS)[number], string | number>;

/** Names instead of ids; left out, the ids of the knowledge stand. */
export interface CsvNames {
  readonly check?: (id: string) => string;
  readonly finding?: (id: string) => string;
}

/**
 * The checks of a case as CSV text (RFC 4180), one line an answer that was found by hand and one a check that was not
 * possible, in the order of time.
 *
 * Shape   a heading, then lines that end in CRLF; figures in the unit of their finding; `taken back` is yes or no.
 */
export function checksCsv(entries: Iterable<Entry>, names: CsvNames = {}): string {
  const { check: checkName = String, finding: findingName = String } = names;
  const rows = foldCase(entries).timeline.flatMap(({ entry, retracted, ignored }): Row[] => {
    if (ignored) return [];
    const head = { at: entry.at, by: entry.by, "taken back": retracted ? "yes" : "no" };
    if (entry.kind === "not-possible") {
      const { check, reason } = entry as EntryOf<"not-possible">;
      return [{ ...EMPTY, ...head, check: checkName(check), result: "not possible", words: reason }];
    }
    if (entry.kind !== "answered") return [];
    const answer = entry as EntryOf<"answered">;
    if (answer.how !== "check") return [];
    return [
      {
        ...head,
        check: answer.check === undefined ? "" : checkName(answer.check),
        finding: findingName(answer.finding),
        result: answer.state,
        level: answer.level ?? "",
        value: answer.value ?? "",
        "circle mm": answer.circleMm ?? "",
        words: answer.words ?? "",
      },
    ];
  });
  const table = [COLUMNS, ...rows.map((row) => COLUMNS.map((column) => row[column]))];
  return csvTable(table);
}

const EMPTY = Object.fromEntries(COLUMNS.map((column) => [column, ""])) as Row;
