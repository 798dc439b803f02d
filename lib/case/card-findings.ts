import { type Finding, findingName, parseFinding } from "../engine/finding-id.ts";
import type { CompiledObservation, Knowledge } from "../knowledge/schema/compiled.ts";
import type { CaseAnswer } from "./case-state.ts";
import type { CardFinding } from "./job-card-types.ts";

/** What a finding id speaks of; undefined when this release does not hold it (a case may be older or newer). */
export function findingIfKnown(knowledge: Knowledge, id: string): Finding | undefined {
  try {
    return parseFinding(knowledge, id);
  } catch {
    return undefined;
  }
}

/**
 * The grade that an answered observation reached: index into its levels, -1 when it is absent.
 *
 * A measured value decides over a level that was ticked; present without either means at least the first grade.
 */
export function gradeOf(observation: CompiledObservation, answer: CaseAnswer): number {
  if (answer.state !== "present") return -1;
  const { value } = answer;
  if (value !== undefined && observation.measure !== undefined) {
    return observation.measure.atLeast.findLastIndex((from) => value >= from);
  }
  return answer.level === undefined ? 0 : Math.max(0, observation.levels.indexOf(answer.level));
}

/** An answer in the words of the job card; an id that this release does not hold stands as it is. */
export function cardFinding(knowledge: Knowledge, answer: CaseAnswer): CardFinding {
  const finding = findingIfKnown(knowledge, answer.finding);
  const check = knowledge.checks.find((one) => one.id === answer.check?.split("@")[0]);
  return {
    finding: answer.finding,
    name: finding === undefined ? answer.finding : findingName(knowledge, answer.finding),
    state: answer.state,
    by: answer.by,
    ...gradeWords(finding, answer),
    ...(check !== undefined && { check: check.name }),
  };
}

function gradeWords(
  finding: Finding | undefined,
  answer: CaseAnswer,
): Pick<CardFinding, "level" | "measured"> {
  if (finding?.kind !== "observation") return {};
  const { levels, measure } = finding.observation;
  const level = levels.length > 1 ? levels[gradeOf(finding.observation, answer)] : undefined;
  return {
    ...(level !== undefined && { level: level.replaceAll("-", " ") }),
    ...(answer.value !== undefined &&
      measure !== undefined && { measured: `${answer.value} ${measure.unit} ${measure.quantity}` }),
  };
}
