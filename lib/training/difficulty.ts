import { repairOfSuspect, weighing } from "../engine/index.ts";
import { bestWay } from "./best-way.ts";
import type { ReadyExercise } from "./exercise-car.ts";
import { likelyRepairs } from "./likely-repairs.ts";
import { misleadingReports } from "./misleading-reports.ts";

/** How hard an exercise is, as reckoned, not as felt. */
export interface Difficulty {
  readonly level: "easy" | "middling" | "hard";
  /** Minutes that the shipped policy takes. */
  readonly bestMinutes: number;
  /** The shipped policy ends at a part behind the complaint. */
  readonly solvable: boolean;
  /** Place of the first true repair in the ranking of repairs on the words alone; 1 is in front. */
  readonly rank: number;
  /** Repairs that are at least half as likely as the likeliest, on the words alone. */
  readonly rivals: number;
  /** What is said that speaks against the true cause. */
  readonly misleading: readonly string[];
}

/** Share of the likeliest repair's chance from which another is its rival. */
const RIVAL = 0.5;
/** Up to these an exercise is easy; beyond the others it is hard. */
const EASY = { rank: 2, minutes: 25 };
const HARD = { rank: 6, minutes: 60 };

/** Reckons how hard an exercise is: rank, rivals and misleading reports at the start, minutes of the shipped policy. */
export function difficultyOf(ready: ReadyExercise): Difficulty {
  const { grounded, car, causes } = ready;
  const played = bestWay(ready);
  const repairs = likelyRepairs(weighing(grounded, car.told));
  const behind = new Set(causes.map(repairOfSuspect));
  const found = repairs.findIndex(({ repair }) => behind.has(repair));
  const rank = found < 0 ? repairs.length + 1 : found + 1;
  const most = repairs[0]?.chance ?? 0;
  const rivals = repairs.filter(({ chance }) => chance >= RIVAL * most).length;
  const misleading = misleadingReports(ready);
  const hard = rank > HARD.rank || played.minutes > HARD.minutes || misleading.length > 1 || !played.right;
  const easy = rank <= EASY.rank && played.minutes <= EASY.minutes && misleading.length === 0;
  return {
    level: hard ? "hard" : easy ? "easy" : "middling",
    bestMinutes: played.minutes,
    solvable: played.right,
    rank,
    rivals,
    misleading,
  };
}
