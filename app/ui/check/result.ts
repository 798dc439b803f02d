import type { Answer } from "../../../lib/engine/index.ts";
import type { CompiledObservation, Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { capital } from "../../text/names.ts";
import { ANSWERED, LOOKED_FOR, stateWords } from "../../text/state-words.ts";

/** What was found for one finding of a check, before it is saved. */
export interface Result {
  readonly state: Answer["state"];
  readonly level?: string;
  readonly value?: number;
}

/** Results gathered so far, by finding. */
export type Results = Readonly<Record<string, Result>>;

/** The observation behind a finding id, when it is one. */
export function observationOf(knowledge: Knowledge, finding: string): CompiledObservation | undefined {
  const id = finding.split("@")[0];
  return knowledge.observations.find((o) => o.id === id);
}

/** A measured value with the grade that the observation's limits give it. */
export function gradeOf(observation: CompiledObservation, value: number): Result {
  const limits = observation.measure?.atLeast ?? [];
  const reached = limits.filter((limit) => value >= limit).length;
  const level = observation.levels[reached - 1];
  return level === undefined ? { state: "absent", value } : { state: "present", level, value };
}

/** A result in words: "clear", "there", "not there", "can't tell". */
export function resultWords(result: Pick<Answer, "state" | "level">, question = false): string {
  const names = question ? ANSWERED : LOOKED_FOR;
  return capital(stateWords(result, { ...names, unknown: "can't tell" }));
}

/** Reads gathered results back from a draft; anything odd is dropped. */
export function resultsOfDraft(text: string, findings: readonly string[]): Results {
  if (text === "") return {};
  try {
    const parsed: unknown = JSON.parse(text);
    if (parsed === null || typeof parsed !== "object") return {};
    return Object.fromEntries(
      Object.entries(parsed as Record<string, Result>).filter(([finding]) => findings.includes(finding)),
    );
  } catch {
    return {};
  }
}
