"use client";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import type { BeforeSeen, Situation } from "../../engine/protocol.ts";
import { type Answered, useAnswer } from "../../engine/use-answer.ts";
import type { Settings } from "../../store/use-settings.ts";
import { ownCosts } from "../../text/cost-fields.ts";

/** Whether to drive, and the parts to have ready; the one before is shown until it is there. */
export function useBeforeSeen(
  knowledge: Knowledge,
  situation: Situation,
  settings: Settings,
  told: boolean,
): Answered<BeforeSeen> {
  const { own } = ownCosts(knowledge, settings.costs);
  const key = told && knowledge.advice !== undefined ? JSON.stringify([situation, own]) : undefined;
  return useAnswer("advise", { ...situation, own }, key);
}
