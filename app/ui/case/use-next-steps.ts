"use client";
import type { CaseState } from "../../../lib/case/case-state.ts";
import type { Decision, ProposedCheck, ProposeOptions, StopSignal } from "../../../lib/engine/index.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import type { Situation } from "../../engine/protocol.ts";
import { useAnswer } from "../../engine/use-answer.ts";
import { useKept } from "../../store/use-kept.ts";
import type { Settings } from "../../store/use-settings.ts";
import { ownCosts } from "../../text/cost-fields.ts";
import { withoutTools } from "../../text/tools.ts";

const LIMIT = 16;

/** What the engine is told of who does the checks, with what. */
export function optionsOf(knowledge: Knowledge, state: CaseState, settings: Settings): ProposeOptions {
  const who = settings.asker === "technician-lift" ? "technician" : settings.asker;
  return {
    setUp: state.setUp,
    who,
    lift: settings.asker === "technician-lift",
    helper: settings.helper,
    // Whoever is remote has nothing but questions and what the owner can look at.
    only: who === "technician" && !settings.canAsk ? "checks" : undefined,
    notPossible: [
      ...state.notPossible.map((n) => n.check),
      ...withoutTools(knowledge.checks, settings.missingTools),
    ],
    limit: LIMIT,
  };
}

export interface NextStepsOnScreen {
  readonly stop: StopSignal | undefined;
  /** What pays: repairing, checking on or handing over; comes after the next check is known. */
  readonly decision: Decision | undefined;
  readonly deciding: boolean;
  /** Why it could not be decided what pays. */
  readonly undecided: string | undefined;
  readonly open: ProposedCheck | undefined;
  readonly others: readonly ProposedCheck[];
  readonly busy: boolean;
  readonly failed: string | undefined;
  /** The open check was picked by a person and stays until it is done. */
  readonly picked: boolean;
  readonly pick: (id: string | undefined) => void;
}

/**
 * The check that is open, and the others worth making. A picked check stays open while the ranking moves.
 *
 * `asked` is how far the screen reads it: nothing is worked out that nobody reads.
 */
export function useNextSteps(
  knowledge: Knowledge,
  situation: Situation,
  state: CaseState,
  settings: Settings,
  asked: "nothing" | "steps" | "decision",
): NextStepsOnScreen {
  const options = optionsOf(knowledge, state, settings);
  const key = JSON.stringify([situation, options]);
  const next = useAnswer("propose", { ...situation, options }, asked === "nothing" ? undefined : key);
  const { own } = ownCosts(knowledge, settings.costs);
  // Asked when the next check stands: that is what somebody waits for.
  const decideKey = asked === "decision" && next.ok ? JSON.stringify([key, own]) : undefined;
  const decided = useAnswer("decide", { ...situation, options, own }, decideKey);
  const [pickedId, pick] = useKept<string | undefined>(`${state.caseId}/picked`, undefined);
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
    decision: decided.ok ? decided.value : undefined,
    undecided: decided.failed,
    deciding: decideKey === undefined || decided.busy,
    open,
    others: checks.filter((c) => c.id !== open?.id),
    busy: next.busy,
    failed: next.failed,
    picked: pickedId !== undefined,
    pick,
  };
}
