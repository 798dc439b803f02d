"use client";
import { useState } from "react";
import { Course, type ExercisesFile, readExercisesFile } from "../../../lib/training/index.ts";
import { serverDoor } from "../../sync/door.ts";
import { failureWords } from "../../sync/failure-words.ts";
import { readReply } from "../../sync/read-reply.ts";
import { messageOf } from "../../text/message-of.ts";
import { FileButton } from "../file-button.tsx";
import type { CourseHere } from "./courses.ts";
import type { ExerciseHead } from "./replies.ts";
import { type TakenIn, takeInExercises } from "./take-in.ts";

const counted = (n: number): string => (n === 1 ? "1 exercise" : `${n} exercises`);

function newsOf({ heads, there }: TakenIn): string {
  const taken = `${counted(heads.length)} taken in.`;
  if (there.length === 0) return taken;
  return `${taken} ${there.length === 1 ? "One has" : `${there.length} have`} a name that is there already, and ${
    there.length === 1 ? "was" : "were"
  } passed over.`;
}

/** Takes exercises in: the ready ones, or a file with one exercise or a course. */
export function ExerciseFiles({
  heads,
  onTaken,
}: {
  readonly heads: readonly ExerciseHead[];
  /** With the course that they came as, when they did. */
  readonly onTaken: (course: CourseHere | undefined) => void;
}) {
  const [busy, setBusy] = useState(false);
  const [news, setNews] = useState<string>();
  const [failed, setFailed] = useState<string>();

  const takeIn = async (get: () => Promise<ExercisesFile>) => {
    setBusy(true);
    setNews(undefined);
    setFailed(undefined);
    try {
      const { course, exercises } = await get();
      const taken = await takeInExercises(exercises, heads);
      setFailed(taken.stopped);
      setNews(newsOf(taken));
      const all = [...heads, ...taken.heads];
      const ids = exercises.flatMap((e) => all.find((head) => head.name === e.name)?.id ?? []);
      onTaken(course && { name: course.name, exercises: ids });
    } catch (error) {
      setFailed(messageOf(error));
    }
    setBusy(false);
  };
  const ready = async (): Promise<ExercisesFile> => {
    const reply = await serverDoor.ask({ method: "GET", path: "/api/v1/ready-exercises" });
    const course = readReply(reply, Course);
    if (course === undefined) throw new Error(failureWords(reply));
    const { name, about, exercises } = course;
    return { course: { name, about }, exercises };
  };
  return (
    <>
      <p className="row">
        <button type="button" disabled={busy} onClick={() => void takeIn(ready)}>
          Take in the twelve ready ones
        </button>
        <FileButton
          label="Take in a file"
          accept="application/json,.json"
          disabled={busy}
          onFile={(file) => void takeIn(async () => readExercisesFile(await file.text()))}
        />
      </p>
      <p role="status">{busy ? "Taking in ..." : news}</p>
      {failed !== undefined && (
        <p className="trouble" role="alert">
          {failed}
        </p>
      )}
    </>
  );
}
