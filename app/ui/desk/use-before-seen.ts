"use client";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import type { BeforeSeen, Situation } from "../../engine/protocol.ts";
import { useAnswer } from "../../engine/use-answer.ts";
import type { Settings } from "../../store/use-settings.ts";
import { ownCosts } from "../../text/cost-fields.ts";

export interface OnDesk<T> {
  readonly value: T | undefined;
  /** What is shown was worked out before the last answer. */
  readonly busy: boolean;
  readonly failed: string | undefined;
}

/** Whether to drive, and the parts to have ready; the one before is shown until it is there. */
export function useBeforeSeen(
  knowledge: Knowledge,
  situation: Situation,
  settings: Settings,
  told: boolean,
): OnDesk<BeforeSeen> {
  const { own } = ownCosts(knowledge, settings.costs);
  const key = told && knowledge.advice !== undefined ? JSON.stringify([situation, own]) : undefined;
  const answer = useAnswer("advise", { ...situation, own }, key);
  const { value, busy } = answer;
  return { value, busy, failed: answer.key === key ? answer.failed : undefined };
}
