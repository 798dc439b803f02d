import type { Knowledge } from "../../lib/knowledge/schema/compiled.ts";
import { capital, levelWords, nameOfFinding } from "./names.ts";

interface Said {
  readonly finding: string;
  readonly state: "present" | "absent" | "unknown";
  readonly level?: string;
}

/** One line of what was said. */
export interface SaidLine {
  readonly key: string;
  /** Name of the complaint that the features under it belong to; empty for findings that stand alone. */
  readonly of: string;
  readonly names: readonly string[];
}

/** What was answered in one way: each complaint with its features on one line, then everything else. */
export function saidLines(
  knowledge: Knowledge,
  answers: readonly Said[],
  is: "present" | "absent",
): SaidLine[] {
  const said = answers.filter((a) => a.state === is);
  const lines: SaidLine[] = [];
  for (const complaint of knowledge.complaints) {
    const features = said.filter((a) => a.finding.startsWith(`${complaint.id}:`));
    const own = said.some((a) => a.finding === complaint.id);
    if (features.length === 0 && !own) continue;
    const names = features.map((a) => {
      const id = a.finding.slice(complaint.id.length + 1);
      return knowledge.features.find((f) => f.id === id)?.name ?? id;
    });
    lines.push({ key: complaint.id, of: complaint.name, names });
  }
  for (const answer of said) {
    const head = answer.finding.split(":")[0];
    if (knowledge.complaints.some((c) => c.id === head)) continue;
    const grade =
      answer.level === undefined || answer.level === "present" ? "" : `: ${levelWords(answer.level)}`;
    lines.push({
      key: answer.finding,
      of: "",
      names: [`${capital(nameOfFinding(knowledge, answer.finding))}${grade}`],
    });
  }
  return lines;
}
