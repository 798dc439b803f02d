import type { CardFinding, JobCard } from "../../../lib/case/job-card-types.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { nameOfFindingAt, nameOfPlace } from "../../text/names.ts";
import { stateWords } from "../../text/state-words.ts";

/** What came out for a finding, in words. */
export function foundWords(finding: CardFinding): string {
  if (finding.state === "unknown") return "could not be told";
  const words = stateWords(finding);
  return finding.measured === undefined ? words : `${words}, ${finding.measured}`;
}

/** Findings of one check, or findings that were told without one. */
export interface CheckedLine {
  readonly key: string;
  readonly check: string;
  readonly words: string;
}

function placeOf(finding: CardFinding): string {
  return finding.finding.split("@")[1] ?? "";
}

/** What was checked, one line a check: what was found, or that nothing was. */
export function checkedLines(card: JobCard, knowledge: Knowledge): CheckedLine[] {
  const byCheck = new Map<string, CardFinding[]>();
  for (const finding of card.found) {
    const key = finding.check === undefined ? finding.finding : `${finding.check}@${placeOf(finding)}`;
    byCheck.set(key, [...(byCheck.get(key) ?? []), finding]);
  }
  return [...byCheck].map(([key, findings]) => {
    const told = findings.some((f) => f.by === "report") ? " (told)" : "";
    const telling = findings.filter((f) => f.state !== "absent" || f.measured !== undefined);
    const named = findings[0]?.check === undefined ? findings : telling;
    const words =
      named.length === 0
        ? "nothing found"
        : named
            .map((f) => `${nameOfFindingAt(knowledge, f.finding, placeOf(f))}: ${foundWords(f)}`)
            .join("; ");
    const check = findings[0]?.check;
    const place = nameOfPlace(knowledge, findings.map(placeOf)[0]);
    return {
      key,
      check: check === undefined ? "" : [check, place].filter((w) => w !== "").join(", "),
      words: `${words}${told}`,
    };
  });
}
