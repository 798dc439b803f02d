import Papa from "papaparse";

/** What a spreadsheet would take for a formula, by OWASP's page on CSV injection: it is made text by an apostrophe. */
const FORMULA = /^[=+\-@\t\r\n\uFF1D\uFF0B\uFF0D\uFF20]/;

/** A table, its heading first, as CSV text (RFC 4180): lines that end in CRLF. */
export function csvTable(lines: readonly (readonly (string | number)[])[]): string {
  const table = lines.map((line) => [...line]);
  return `${Papa.unparse(table, { escapeFormulae: FORMULA, newline: "\r\n" })}\r\n`;
}
