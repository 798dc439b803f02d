import { repairName } from "../engine/names.ts";
import type { Knowledge } from "../knowledge/schema/compiled.ts";
import type { CaseState } from "./case-state.ts";
import type { CardAdvice } from "./job-card-types.ts";

/** The advice of a case in words; a level or a part that this release does not hold stands by its id. */
export function cardAdvice(knowledge: Knowledge, advised: NonNullable<CaseState["advised"]>): CardAdvice {
  const { level, parts, ...rest } = advised;
  return {
    ...rest,
    level: knowledge.advice?.levels.find((one) => one.id === level)?.name ?? level,
    parts: parts.map((id) => repairName(knowledge, id)),
  };
}
