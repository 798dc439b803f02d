import type { Knowledge } from "../../lib/knowledge/schema/compiled.ts";
import { capital, nameOfFinding } from "./names.ts";
import { ANSWERED, LOOKED_FOR, stateWords } from "./state-words.ts";

/** One finding as a check or a question left it. */
export interface FoundOne {
  readonly finding: string;
  readonly state: "present" | "absent" | "unknown";
  readonly level?: string | undefined;
  readonly by: "report" | "check";
}

/** What was found of one finding, in words: "Play at 12 and 6 o'clock, front left: clear". */
export function foundLine(knowledge: Knowledge, { finding, state, level, by }: FoundOne): string {
  const names = by === "report" ? { ...ANSWERED, unknown: LOOKED_FOR.unknown } : LOOKED_FOR;
  return `${capital(nameOfFinding(knowledge, finding))}: ${stateWords({ state, level }, names)}`;
}
