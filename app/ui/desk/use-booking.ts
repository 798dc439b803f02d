"use client";
import { useState } from "react";
import type { CaseState } from "../../../lib/case/case-state.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import type { Booked, Situation } from "../../engine/protocol.ts";
import { useAnswer } from "../../engine/use-answer.ts";
import type { Settings } from "../../store/use-settings.ts";
import { ownCosts } from "../../text/cost-fields.ts";
import { withoutTools } from "../../text/tools.ts";

/** Visits that are played in all. */
export const ALL_VISITS = 60;
/** Visits from which on the figures are good enough to be said. */
export const ENOUGH_VISITS = 20;
/** Visits after which the figures are shown again. */
const AT_A_TIME = 4;

export interface BookingOnDesk {
  /** From the visits played so far; undefined while there are none for the answers as they stand. */
  readonly value: Booked | undefined;
  readonly failed: string | undefined;
}

/** How long to book, with a figure that settles while more visits are played; begun anew with every answer. */
export function useBooking(
  knowledge: Knowledge,
  state: CaseState,
  situation: Situation,
  settings: Settings,
  ready: boolean,
): BookingOnDesk {
  const { own } = ownCosts(knowledge, settings.costs);
  // In the workshop, whoever sits at the desk: a technician with a lift and a second pair of hands.
  const options = {
    who: "technician",
    lift: true,
    helper: true,
    notPossible: [
      ...state.notPossible.map((n) => n.check),
      ...withoutTools(knowledge.checks, settings.missingTools),
    ],
  } as const;
  const base = JSON.stringify([situation, options, own]);
  const [goal, setGoal] = useState({ base, visits: AT_A_TIME });
  const visits = goal.base === base ? goal.visits : AT_A_TIME;
  const key = ready ? JSON.stringify([base, visits]) : undefined;
  const answer = useAnswer("book", { ...situation, options, own, visits }, key);
  const played = answer.ok ? (answer.value?.booking.visits ?? 0) : 0;
  // The next visits are asked for as soon as these are there; in the same render, as nothing outside is touched.
  if (played >= visits && visits < ALL_VISITS)
    setGoal({ base, visits: Math.min(ALL_VISITS, visits + AT_A_TIME) });
  // While the next visits are played, those so far stay on the screen; after a failure the value may be of other answers.
  const isNow = answer.key !== undefined && (JSON.parse(answer.key) as [string, number])[0] === base;
  return {
    value: isNow && answer.failed === undefined ? answer.value : undefined,
    failed: answer.failed,
  };
}
