import { repairOfSuspect } from "../engine/index.ts";
import { bestWay } from "./best-way.ts";
import { type Difficulty, difficultyOf } from "./difficulty.ts";
import type { ReadyExercise } from "./exercise-car.ts";
import { likelyRepairs, type RepairChance } from "./likely-repairs.ts";
import { type ReplayedCheck, replayAttempt } from "./replay.ts";

/** What an instructor sees of an exercise before handing it out. */
export interface ExercisePreview {
  readonly difficulty: Difficulty;
  /** The shipped policy's way, step by step. */
  readonly path: readonly ReplayedCheck[];
  /** Repairs that stand in front at some time on that way though they are in order, with their highest chance. */
  readonly traps: readonly RepairChance[];
  /** Repairs still alive at the end that no check left can tell from the hidden one. */
  readonly notTold: readonly RepairChance[];
}

/** From this chance on a wrong repair is worth a word. */
const WORTH_NAMING = 0.15;
/** A check that tells less than this is as good as none. Units: bits. */
const TELLS_SOMETHING = 0.05;

/** The best way, the traps, and whether the hidden fault can be told from its rivals with the checks that exist. */
export function previewExercise(ready: ReadyExercise): ExercisePreview {
  const { causes, innocent } = ready;
  const replay = replayAttempt(
    ready,
    bestWay(ready).checks.map((id) => ({ kind: "check", id })),
  );
  const faulty = new Set([...causes, ...innocent].map(repairOfSuspect));
  const wrong = ({ repair, chance }: RepairChance): boolean => !faulty.has(repair) && chance >= WORTH_NAMING;
  const highest = new Map<string, number>();
  const [start] = likelyRepairs(replay.start);
  for (const front of [start, ...replay.checks.map((c) => c.inFront)]) {
    if (front === undefined || !wrong(front)) continue;
    highest.set(front.repair, Math.max(highest.get(front.repair) ?? 0, front.chance));
  }
  const tellsMore = replay.left.some((p) => p.kind === "check" && p.gainBits >= TELLS_SOMETHING);
  return {
    difficulty: difficultyOf(ready),
    path: replay.checks,
    traps: [...highest].map(([repair, chance]) => ({ repair, chance })).sort((a, b) => b.chance - a.chance),
    notTold: tellsMore ? [] : likelyRepairs(replay.weighing).filter(wrong),
  };
}
