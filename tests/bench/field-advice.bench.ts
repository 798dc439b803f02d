import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { adviseCase, TURNED_OUT_DANGEROUS } from "../field/advise-case.ts";
import { type FieldCase, fieldCases } from "../field/field-cases.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";

const VISITS = 20;
const BEGIN = "<!-- npm run bench -- fieldAdvice --write: from here -->";
const END = "<!-- to here -->";
const HEAD = [
  "case",
  "turned out to be",
  "advice",
  "visit, min: p50, p90",
  "lift, helper, drive %",
  "first three questions",
];

/** What a desk would say of the solved complaints, from the owner's words alone; with `write` into DEVELOPERS.md as well. */
export function fieldAdvice({ write }: { readonly write?: string | undefined } = {}): string {
  const knowledge = shippedKnowledge();
  const cases = fieldCases();
  const rows = cases.map((c, i) => {
    const { advice, booked, questions } = adviseCase(knowledge, c, VISITS);
    process.stderr.write(`${i + 1}/${cases.length} ${c.id}\n`);
    const percent = (share: number | undefined): string => ((share ?? 0) * 100).toFixed(0);
    return [
      c.id,
      causeOf(c),
      advice.level,
      booked === undefined ? "-" : `${booked.whole.p50.toFixed(0)}, ${booked.whole.p90.toFixed(0)}`,
      [booked?.raised, booked?.helper, booked?.roadTest].map(percent).join(", "),
      questions.map((q) => q.question).join(" "),
    ];
  });
  const text = markdown([HEAD, ...rows]);
  if (write !== undefined) putBetween(join(write, "DEVELOPERS.md"), text);
  return text;
}

function causeOf(c: FieldCase): string {
  const dangerous = TURNED_OUT_DANGEROUS[c.id];
  return dangerous === undefined ? c.causeParts.join(", ") : `**${dangerous}**`;
}

function markdown(rows: readonly (readonly string[])[]): string {
  const widths = HEAD.map((_, k) => Math.max(...rows.map((row) => (row[k] ?? "").length)));
  const line = (row: readonly string[]): string =>
    `| ${row.map((cell, k) => cell.padEnd(widths[k] ?? 0)).join(" | ")} |`;
  const [head = [], ...body] = rows;
  return [line(head), line(widths.map((w) => "-".repeat(w))), ...body.map(line)].join("\n");
}

function putBetween(file: string, text: string): void {
  const before = readFileSync(file, "utf8");
  const [from, to] = [before.indexOf(BEGIN), before.indexOf(END)];
  if (from < 0 || to < from) throw new Error(`${file}: the lines "${BEGIN}" and "${END}" are not there`);
  writeFileSync(file, `${before.slice(0, from)}${BEGIN}\n\n${text}\n\n${before.slice(to)}`);
}
