import { type Grounded, weighing, workshopCosts } from "../engine/index.ts";
import { byExpectedCost, playCase, shippedChoice } from "../engine/policies/index.ts";
import type { ReadyExercise } from "./exercise-car.ts";
import { without } from "./replay.ts";
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
  const { grounded, car, causes, exercise } = ready;
  const costs = workshopCosts(grounded.knowledge);
  const { lift, helper, missingTools } = exercise.terms;
  const played = playCase(grounded, car, shippedChoice, byExpectedCost(costs), {
    costs,
    lift,
    helper,
    ...without(grounded, missingTools),
    uniform: () => 0,
  });
  const repairs = likelyRepairs(grounded, car.told);
  const behind = new Set(causes.map((s) => `${s.part}@${s.place}`));
  const found = repairs.findIndex(([repair]) => behind.has(repair));
  const rank = found < 0 ? repairs.length + 1 : found + 1;
  const [, most = 0] = repairs[0] ?? [];
  const rivals = repairs.filter(([, chance]) => chance >= RIVAL * most).length;
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

/** Repairs by their chance to explain what is known, likeliest first. */
export function likelyRepairs(
  grounded: Grounded,
  answers: Parameters<typeof weighing>[1],
): (readonly [string, number])[] {
  const chances = new Map<string, number>();
  for (const { suspect, explains } of weighing(grounded, answers).weighed.ranking) {
    const repair = `${suspect.part}@${suspect.place}`;
    chances.set(repair, (chances.get(repair) ?? 0) + explains);
  }
  return [...chances].sort((a, b) => b[1] - a[1] || (a[0] < b[0] ? -1 : 1));
}
