"use client";
import type { ExerciseQuestions } from "./exercise-protocol.ts";
import { workerClient } from "./worker-client.ts";

/** Asks about exercises with a release; drawing one takes a second or two, so a worker of their own keeps the page free. */
export const askExercises = workerClient<ExerciseQuestions>({
  make: () => new Worker(new URL("./exercise.worker.ts", import.meta.url), { type: "module" }),
  most: 1,
  replaced: "Another exercise was opened meanwhile.",
});
