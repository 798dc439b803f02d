import { z } from "zod";
import { Exercise } from "../../../lib/training/index.ts";

/** An exercise in a list, as the server tells it. */
export const ExerciseHead = z.object({
  id: z.string(),
  name: z.string(),
  changedAt: z.string(),
  version: z.number().int(),
});
export type ExerciseHead = z.infer<typeof ExerciseHead>;

export const ExerciseList = z.object({ exercises: z.array(ExerciseHead) });

export const KeptExercise = ExerciseHead.extend({ exercise: Exercise });
export type KeptExercise = z.infer<typeof KeptExercise>;

/** What was handed out of an exercise. */
export const HandOutList = z.object({
  handOuts: z.array(
    z.object({
      id: z.string(),
      code: z.string(),
      course: z.string().nullable(),
      madeAt: z.string(),
      expiresAt: z.string(),
      revokedAt: z.string().nullable(),
    }),
  ),
});
export type HandOut = z.infer<typeof HandOutList>["handOuts"][number];

export const MadeHandOut = z.object({
  id: z.string(),
  code: z.string(),
  token: z.string(),
  expiresAt: z.string(),
});
export type MadeHandOut = z.infer<typeof MadeHandOut>;
