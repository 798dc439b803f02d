import { type ProposedCheck, proposeChecks, weighing, workshopCosts } from "../engine/index.ts";
import { byExpectedCost, playCase, shippedChoice } from "../engine/policies/index.ts";
import { difficultyOf, type Difficulty, likelyRepairs } from "./difficulty.ts";
import type { ReadyExercise } from "./exercise-car.ts";
import { type ReplayedCheck, replayAttempt, without } from "./replay.ts";

/** What an instructor sees of an exercise before handing it out. */
export interface ExercisePreview {
  readonly difficulty: Difficulty;
  /** The shipped policy's way, step by step. */
  readonly path: readonly ReplayedCheck[];
  /** Repairs that stand in front at some time on that way though they are in order, with their highest chance. */
  readonly traps: readonly { readonly repair: string; readonly chance: number }[];
  /** Repairs still alive at the end that no check left can tell from the hidden one. */
  readonly notTold: readonly { readonly repair: string; readonly chance: number }[];
}

/** From this chance on a wrong repair is worth a word. */
const WORTH_NAMING = 0.15;

/** The best way, the traps, and whether the hidden fault can be told from its rivals with the checks that exist. */
export function previewExercise(ready: ReadyExercise): ExercisePreview {
  const { grounded, car, causes, innocent, exercise } = ready;
  const { lift, helper, missingTools } = exercise.terms;
  const costs = workshopCosts(grounded.knowledge);
  const means = { lift, helper, ...without(grounded, missingTools) };
  const played = playCase(grounded, car, shippedChoice, byExpectedCost(costs), {
    costs,
    ...means,
    uniform: () => 0,
  });
  const { checks, answers } = replayAttempt(
    ready,
    played.checks.map((id) => ({ kind: "check", id })),
  );
  const faulty = new Set([...causes, ...innocent].map((s) => `${s.part}@${s.place}`));
  const highest = new Map<string, number>();
  const inFront = (known: readonly (typeof answers)[number][]): void => {
    const [first] = likelyRepairs(grounded, known);
    if (first !== undefined && !faulty.has(first[0]))
      highest.set(first[0], Math.max(highest.get(first[0]) ?? 0, first[1]));
  };
  let known = [...car.told];
  inFront(known);
  for (const check of checks) {
    known = [...known, ...check.found];
    inFront(known);
  }
  return {
    difficulty: difficultyOf(ready),
    path: checks,
    traps: [...highest]
      .map(([repair, chance]) => ({ repair, chance }))
      .filter(({ chance }) => chance >= WORTH_NAMING)
      .sort((a, b) => b.chance - a.chance),
    notTold: left(proposeChecks(grounded, answers, weighing(grounded, answers), means))
      ? []
      : likelyRepairs(grounded, answers)
          .filter(([repair, chance]) => !faulty.has(repair) && chance >= WORTH_NAMING)
          .map(([repair, chance]) => ({ repair, chance })),
  };
}

/** Does any check left still tell something? */
function left(proposed: readonly ProposedCheck[]): boolean {
  return proposed.some((p) => p.kind === "check" && p.gainBits >= 0.05);
}
