import { COURSE_FORMAT, type Course, type Exercise, EXERCISE_FORM } from "../../../lib/training/index.ts";
import { serverDoor } from "../../sync/door.ts";
import { failureWords } from "../../sync/failure-words.ts";
import { readReply } from "../../sync/read-reply.ts";
import { ExerciseHead, KeptExercise } from "./replies.ts";
import { askExercise } from "./use-kept-exercise.ts";

/** What became of exercises that were to be taken in. */
export interface TakenIn {
  readonly heads: readonly ExerciseHead[];
  /** Names of those that were passed over: one of that name is there already. */
  readonly there: readonly string[];
  /** Why it stopped; undefined when all went through. */
  readonly stopped: string | undefined;
}

/** Keeps exercises on the server, one after the other; those whose name is there already are passed over. */
export async function takeInExercises(
  exercises: readonly Exercise[],
  known: readonly ExerciseHead[],
): Promise<TakenIn> {
  const heads: ExerciseHead[] = [];
  const there: string[] = [];
  for (const exercise of exercises) {
    if ([...known, ...heads].some((head) => head.name === exercise.name)) {
      there.push(exercise.name);
      continue;
    }
    const reply = await serverDoor.ask({ method: "POST", path: "/api/v1/exercises", body: exercise });
    const head = readReply(reply, ExerciseHead);
    if (head === undefined)
      return { heads, there, stopped: `"${exercise.name}" could not be taken in: ${failureWords(reply)}` };
    heads.push(head);
  }
  return { heads, there, stopped: undefined };
}

/** Exercises of the server as one course file; a word on why, when one of them cannot be had. */
export async function courseOf(
  name: string,
  heads: readonly ExerciseHead[],
): Promise<{ readonly course: Course } | { readonly failed: string }> {
  const exercises: Exercise[] = [];
  for (const head of heads) {
    const reply = await askExercise(head.id);
    const kept = readReply(reply, KeptExercise);
    if (kept === undefined) return { failed: `"${head.name}" could not be read: ${failureWords(reply)}` };
    exercises.push(kept.exercise);
  }
  return { course: { format: COURSE_FORMAT, form: EXERCISE_FORM, name, about: "", exercises } };
}
