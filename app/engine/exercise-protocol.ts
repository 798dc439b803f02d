import type { CaseCar } from "../../lib/case/entries.ts";
import type {
  Difficulty,
  DrawWish,
  Exercise,
  ExercisePreview,
  ReplayedCheck,
  SaidWish,
} from "../../lib/training/index.ts";

/** One check of the best way, as an instructor sees it. */
export type PreviewStep = Pick<ReplayedCheck, "id" | "minutes" | "found" | "inFront">;

/** What an instructor sees of an exercise before it is handed out. */
export interface PreviewShown extends Omit<ExercisePreview, "path"> {
  readonly path: readonly PreviewStep[];
}

/** Questions to the worker of exercises, and what each is answered with. */
export interface ExerciseQuestions {
  /** Faults that this car can have, as `fault@place`. */
  suspects: {
    ask: { readonly car: CaseCar; readonly lately: readonly string[] };
    answer: readonly string[];
  };
  draw: {
    ask: { readonly wish: DrawWish; readonly seed: number };
    answer: { readonly exercise: Exercise; readonly difficulty: Difficulty };
  };
  said: {
    ask: { readonly wish: SaidWish; readonly seed: number };
    answer: { readonly said: Exercise["said"]; readonly text: string };
  };
  preview: { ask: { readonly exercise: Exercise }; answer: PreviewShown };
}

export type ExerciseKind = keyof ExerciseQuestions;
