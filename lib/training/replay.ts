import {
  type Answer,
  type Decision,
  decideNext,
  forbiddenCheck,
  type Grounded,
  type ProposedCheck,
  proposeChecks,
  type Weighing,
  weighing,
  workshopCosts,
} from "../engine/index.ts";
import type { Step } from "./attempt.ts";
import { meansOf } from "./best-way.ts";
import { exerciseResult, type ReadyExercise } from "./exercise-car.ts";
import { likelyRepairs, type RepairChance } from "./likely-repairs.ts";
import { stepTakes } from "./ramp-minutes.ts";

/** One check of an attempt, beside what the reasoning would have done then. */
export interface ReplayedCheck {
  readonly id: string;
  /** With bringing the car into the set-up. Units: minutes. */
  readonly minutes: number;
  readonly found: readonly Answer[];
  /** The best check then; undefined when nothing was left that tells anything. */
  readonly best: ProposedCheck | undefined;
  /** Expected information of the check that was made. Units: bits. */
  readonly gainBits: number;
  /** Minutes beyond those in which the best check's rate would have taught as much; 0 for the best one. */
  readonly lost: number;
  /** Already known when it was made. */
  readonly repeated: boolean;
  /** Must not be made as things stood: a danger. */
  readonly forbidden: boolean;
  /** Its cautions were not acknowledged before. */
  readonly cautionSkipped: boolean;
  /** The repair could already be named when it was made. */
  readonly afterProof: boolean;
  /** The repair in front afterwards. */
  readonly inFront: RepairChance | undefined;
}

/** An attempt gone through again. */
export interface Replay {
  readonly checks: readonly ReplayedCheck[];
  readonly minutes: number;
  /** Weighing of what the customer said, before any step. */
  readonly start: Weighing;
  /** Everything known at the end, and the weighing of it. */
  readonly answers: readonly Answer[];
  readonly weighing: Weighing;
  readonly decision: Decision;
  /** The checks and questions that are left, best first; empty when none tells anything. */
  readonly left: readonly ProposedCheck[];
}

/**
 * Goes through an attempt step by step, weighing as the trainee could have.
 *
 * Results come from the hidden car, so the same steps always give the same replay.
 * Errors: `unknown-id` for a check that cannot be made on this car.
 */
export function replayAttempt(ready: ReadyExercise, steps: readonly Step[]): Replay {
  const { grounded, car } = ready;
  const means = meansOf(ready);
  const { setUps } = grounded.knowledge;
  const answers: Answer[] = [...car.told];
  const read = new Set<string>();
  const checks: ReplayedCheck[] = [];
  let setUp = setUps.start;
  const start = weighing(grounded, answers);
  let now = start;
  let minutes = 0;
  for (const step of steps) {
    if (step.kind === "cautions-read") read.add(step.check);
    if (step.kind !== "check") continue;
    const proposed = proposeChecks(grounded, answers, now, { setUp, ...means });
    const sure = decide(grounded, answers, now, proposed).sure;
    const made = stepTakes(grounded, step.id, setUp);
    const chosen = proposed.find((p) => p.id === step.id);
    const [best] = proposed;
    const gainBits = chosen?.gainBits ?? 0;
    const taught = best === undefined || best.score <= 0 ? 0 : gainBits / best.score;
    const found = exerciseResult(ready, step.id);
    const known = new Set(
      answers.flatMap((a) => (a.by === "check" || step.id.startsWith("ask:") ? [a.finding] : [])),
    );
    const forbidden =
      made.check !== undefined &&
      forbiddenCheck(grounded.knowledge, answers, now.weighed.notices, made.check, made.place) !== undefined;
    answers.push(...found);
    setUp = made.setUp;
    minutes += made.minutes;
    now = weighing(grounded, answers);
    checks.push({
      id: step.id,
      minutes: made.minutes,
      found,
      best,
      gainBits,
      lost: step.id === best?.id ? 0 : Math.max(0, made.minutes - taught),
      repeated: found.every((f) => known.has(f.finding)),
      forbidden,
      cautionSkipped: (made.check?.cautions.length ?? 0) > 0 && !read.has(made.check?.id ?? ""),
      afterProof: sure,
      inFront: likelyRepairs(now)[0],
    });
  }
  const left = proposeChecks(grounded, answers, now, { setUp, ...means });
  const decision = decide(grounded, answers, now, left);
  return { checks, minutes, start, answers, weighing: now, decision, left };
}

function decide(
  grounded: Grounded,
  answers: readonly Answer[],
  now: Weighing,
  proposed: readonly ProposedCheck[],
): Decision {
  return decideNext(grounded, answers, now, proposed, {
    costs: workshopCosts(grounded.knowledge),
    firstWorth: true,
  });
}
