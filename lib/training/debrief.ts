import { type Answer, repairOfSuspect } from "../engine/index.ts";
import type { PlayedCase } from "../engine/policies/index.ts";
import type { Attempt } from "./attempt.ts";
import { bestWay } from "./best-way.ts";
import { exerciseResult, type ReadyExercise } from "./exercise-car.ts";
import type { RepairChance } from "./likely-repairs.ts";
import { likelyRepairs } from "./likely-repairs.ts";
import { stepTakes } from "./ramp-minutes.ts";
import { type ReplayedCheck, replayAttempt } from "./replay.ts";
import { type Score, scoreAttempt } from "./score.ts";

/** A check that the reasoning would have made, with what it promised. */
export interface BestCheck {
  readonly id: string;
  /** With bringing the car into the set-up. Units: minutes. */
  readonly minutes: number;
  /** Expected information about the cause. Units: bits. */
  readonly gainBits: number;
}

/** One step of a trainee beside what the reasoning would have done then. */
export interface DebriefStep extends Omit<ReplayedCheck, "best"> {
  readonly best: BestCheck | undefined;
}

/** What an attempt is talked over with; it holds what is hidden. */
export interface Debrief {
  readonly score: Score;
  readonly steps: readonly DebriefStep[];
  /** Repairs that the hidden faults behind the complaint, and the innocent ones, need: `part@place`. */
  readonly causes: readonly string[];
  readonly innocent: readonly string[];
  /** Parts that were ordered before the verdict, in their order. */
  readonly orders: readonly string[];
  /** The repair in front on the words alone. */
  readonly atStart: RepairChance | undefined;
  /** What the reasoning would have done from the start, on the same car. */
  readonly bestWay: readonly {
    readonly id: string;
    readonly minutes: number;
    readonly found: readonly Answer[];
  }[];
  /** What the reasoning would have done at the end; undefined when nothing was left that tells anything. */
  readonly left: BestCheck | undefined;
}

/**
 * An attempt gone through beside the reasoning, with its score.
 *
 * Errors: `unknown-id` for a check that cannot be made on this car.
 */
export function debriefOf(ready: ReadyExercise, attempt: Attempt): Debrief {
  const replay = replayAttempt(ready, attempt.steps);
  const [left] = replay.left;
  return {
    score: scoreAttempt(ready, attempt, replay),
    steps: replay.checks.map(({ best, ...step }) => ({ ...step, best: best && shortly(best) })),
    causes: [...new Set(ready.causes.map(repairOfSuspect))],
    innocent: [...new Set(ready.innocent.map(repairOfSuspect))],
    orders: attempt.steps.flatMap((s) => (s.kind === "ordered" ? [s.repair] : [])),
    atStart: likelyRepairs(replay.start)[0],
    bestWay: wayWithResults(ready, bestWay(ready)),
    left: left && shortly(left),
  };
}

function shortly(check: NonNullable<ReplayedCheck["best"]>): BestCheck {
  return { id: check.id, minutes: check.minutes + check.setUpMinutes, gainBits: check.gainBits };
}

function wayWithResults(ready: ReadyExercise, played: PlayedCase): Debrief["bestWay"] {
  let setUp = ready.grounded.knowledge.setUps.start;
  return played.checks.map((id) => {
    const takes = stepTakes(ready.grounded, id, setUp);
    setUp = takes.setUp;
    return { id, minutes: takes.minutes, found: exerciseResult(ready, id) };
  });
}
