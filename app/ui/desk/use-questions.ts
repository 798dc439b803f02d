"use client";
import type { LayQuestion } from "../../../lib/engine/index.ts";
import type { Situation } from "../../engine/protocol.ts";
import { useAnswer } from "../../engine/use-answer.ts";
import { useKept } from "../../store/use-kept.ts";

/** The first question and those shown after it. */
const SHOWN = 4;

export interface Questions {
  readonly open: LayQuestion | undefined;
  readonly others: readonly LayQuestion[];
  /** What is shown was worked out before the last answer. */
  readonly busy: boolean;
  readonly failed: string | undefined;
  readonly pick: (id: string | undefined) => void;
}

/** What to ask the customer next; a question that was picked stays until it is answered. */
export function useQuestions(situation: Situation, caseId: string): Questions {
  const key = JSON.stringify(situation);
  const asked = useAnswer("questions", { ...situation, options: { most: SHOWN, who: "driver" } }, key);
  const [picked, pick] = useKept<string | undefined>(`${caseId}/asking`, undefined);
  const all = asked.value ?? [];
  const open = all.find((q) => q.id === picked) ?? all[0];
  return {
    open,
    others: all.filter((q) => q !== open),
    busy: asked.busy,
    failed: asked.failed,
    pick,
  };
}
