"use client";
import { useState } from "react";
import type { CaseState } from "../../../lib/case/case-state.ts";
import type { ProposedCheck, ProposeOptions, StopSignal } from "../../../lib/engine/index.ts";
import type { Situation } from "../../engine/protocol.ts";
import { useAnswer } from "../../engine/use-answer.ts";
import type { Settings } from "../../store/use-settings.ts";

const LIMIT = 16;

function optionsOf(state: CaseState, settings: Settings): ProposeOptions {
  const who = settings.asker === "technician-lift" ? "technician" : settings.asker;
  return {
    setUp: state.setUp,
    who,
    lift: settings.asker === "technician-lift",
    helper: settings.helper,
    // Whoever is remote has nothing but questions and what the owner can look at.
    only: who === "technician" && !settings.canAsk ? "checks" : undefined,
    notPossible: state.notPossible.map((n) => n.check),
    limit: LIMIT,
  };
}

export interface NextStepsOnScreen {
  readonly stop: StopSignal | undefined;
  readonly open: ProposedCheck | undefined;
  readonly others: readonly ProposedCheck[];
  readonly busy: boolean;
  readonly failed: string | undefined;
  /** The open check was picked by a person and stays until it is done. */
  readonly picked: boolean;
  readonly pick: (id: string | undefined) => void;
}

/** The check that is open, and the others worth making. A picked check stays open while the ranking moves. */
export function useNextSteps(situation: Situation, state: CaseState, settings: Settings): NextStepsOnScreen {
  const options = optionsOf(state, settings);
  const key = JSON.stringify([situation, options]);
  const next = useAnswer("propose", { ...situation, options }, key);
  const [pickedId, pick] = useState<string>();
  const checks = next.value?.checks ?? [];
  const listed = checks.find((c) => c.id === pickedId);
  const wanted = pickedId !== undefined && listed === undefined ? pickedId : undefined;
  const named = useAnswer(
    "open",
    { ...situation, id: wanted ?? "", setUp: state.setUp },
    wanted === undefined ? undefined : JSON.stringify([situation, wanted, state.setUp]),
  );
  const byName = named.value?.id === wanted ? named.value : undefined;
  const open = pickedId === undefined ? checks[0] : (listed ?? byName);
  return {
    stop: next.value?.stop,
    open,
    others: checks.filter((c) => c.id !== open?.id),
    busy: next.busy,
    failed: next.key === key ? next.failed : undefined,
    picked: pickedId !== undefined,
    pick,
  };
}
