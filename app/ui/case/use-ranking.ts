"use client";
import { useMemo } from "react";
import type { CaseState } from "../../../lib/case/case-state.ts";
import { situationOf } from "../../../lib/case/situation.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { useAnswer } from "../../engine/use-answer.ts";

/** The ranking of a case as it stands; the one before is shown until it is there, its failure is not. */
export function useRanking(knowledge: Knowledge, state: CaseState) {
  const situation = useMemo(() => situationOf(knowledge, state), [knowledge, state]);
  const key = JSON.stringify(situation);
  const { value, busy, failed } = useAnswer("weigh", situation, key);
  return { situation, ranked: value, busy, failed };
}
