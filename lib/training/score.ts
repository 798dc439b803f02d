import { repairOfSuspect } from "../engine/index.ts";
import type { Attempt } from "./attempt.ts";
import { bestWay } from "./best-way.ts";
import type { ReadyExercise } from "./exercise-car.ts";
import { replayAttempt } from "./replay.ts";

/** How an attempt went. */
export interface Score {
  /** A part behind the complaint was named, at its place; undefined without a verdict. */
  readonly right: boolean | undefined;
  /** A part behind the complaint was named, perhaps at another place. */
  readonly rightPart: boolean | undefined;
  /** Every part behind the complaint was named, and no other. */
  readonly complete: boolean | undefined;
  readonly minutes: number;
  /** What the shipped policy takes from the same start, on the same car. Units: minutes. */
  readonly bestMinutes: number;
  /** Sum of what each step lost against the best choice then. Units: minutes. */
  readonly lostMinutes: number;
  /** `part@place` named or ordered that is in order. */
  readonly wrongParts: readonly string[];
  /** Checks that were dangerous as things stood. */
  readonly unsafe: readonly string[];
  /** Checks whose cautions were not acknowledged. */
  readonly cautionsSkipped: readonly string[];
  /** The verdict was given while nothing proved it and checking on was cheaper. */
  readonly jumped: boolean;
  /** Minutes of checks after the repair could be named. */
  readonly afterProof: number;
  /** Squared distance of the stated confidence from the outcome, 0..1; undefined without a verdict. */
  readonly brier: number | undefined;
}

/**
 * Scores an attempt. Only the order of its steps counts, never the clock.
 *
 * Source of the measure of confidence: Brier 1950.
 */
export function scoreAttempt(
  ready: ReadyExercise,
  attempt: Attempt,
  replay = replayAttempt(ready, attempt.steps),
): Score {
  const { causes, innocent } = ready;
  const named = attempt.conclusion?.suspects.map((id) => repairOfId(ready, id));
  const faulty = new Set([...causes, ...innocent].map(repairOfSuspect));
  const needed = new Set(causes.map(repairOfSuspect));
  const parts = new Set(causes.map((s) => s.part));
  const right = named?.some((repair) => needed.has(repair));
  const ordered = attempt.steps.flatMap((s) => (s.kind === "ordered" ? [s.repair] : []));
  const proven = named?.every((repair) =>
    replay.weighing.weighed.proven.some((id) => repairOfId(ready, id) === repair),
  );
  return {
    right,
    rightPart: named?.some((repair) => parts.has(repair.split("@")[0] ?? "")),
    complete: named && new Set(named).size === needed.size && named.every((repair) => needed.has(repair)),
    minutes: replay.minutes,
    bestMinutes: bestWay(ready).minutes,
    lostMinutes: replay.checks.reduce((sum, c) => sum + c.lost, 0),
    wrongParts: [...new Set([...ordered, ...(named ?? [])])].filter((repair) => !faulty.has(repair)),
    unsafe: replay.checks.filter((c) => c.forbidden).map((c) => c.id),
    cautionsSkipped: [...new Set(replay.checks.filter((c) => c.cautionSkipped).map((c) => c.id))],
    jumped: named !== undefined && proven === false && replay.decision.kind === "check",
    afterProof: replay.checks.reduce((sum, c) => sum + (c.afterProof ? c.minutes : 0), 0),
    brier:
      attempt.conclusion === undefined || right === undefined
        ? undefined
        : (attempt.conclusion.confidence - (right ? 1 : 0)) ** 2,
  };
}

function repairOfId({ grounded }: ReadyExercise, id: string): string {
  const suspect = grounded.suspects.find((s) => s.id === id);
  return suspect === undefined ? id : repairOfSuspect(suspect);
}
