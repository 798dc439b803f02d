import type { Knowledge } from "../../lib/knowledge/schema/compiled.ts";
import { capital, levelWords, nameOfFinding } from "./names.ts";

/** One finding as a check or a question left it. */
export interface FoundOne {
  readonly finding: string;
  readonly state: "present" | "absent" | "unknown";
  readonly level?: string | undefined;
  readonly by: "report" | "check";
}

/** What was found of one finding, in words: "Play at 12 and 6 o'clock, front left: clear". */
export function foundLine(knowledge: Knowledge, { finding, state, level, by }: FoundOne): string {
  const told = by === "report";
  const words =
    state === "unknown"
      ? "cannot tell"
      : state === "absent"
        ? told
          ? "no"
          : "not there"
        : level !== undefined && level !== "present"
          ? levelWords(level)
          : told
            ? "yes"
            : "there";
  return `${capital(nameOfFinding(knowledge, finding))}: ${words}`;
}
