"use client";
import Link from "next/link";
import { useCallback, useEffect, useState } from "react";
import { useDraft } from "../../store/use-draft.ts";
import { serverDoor } from "../../sync/door.ts";
import { failureWords } from "../../sync/failure-words.ts";
import { readReply } from "../../sync/read-reply.ts";
import { momentWords } from "../../text/moment.ts";
import { SheetPart } from "../sheet-part.tsx";
import { TitledSheet } from "../titled-sheet.tsx";
import { CoursePart } from "./course-part.tsx";
import { coursesOfDraft, withCourse } from "./courses.ts";
import { ExerciseFiles } from "./exercise-files.tsx";
import { ExerciseLine } from "./exercise-line.tsx";
import { type ExerciseHead, ExerciseList } from "./replies.ts";
import { TeachGate } from "./teach-gate.tsx";

/** The exercises of an instructor, and the ways to new ones. */
export function TeachScreen() {
  return (
    <TitledSheet title="Exercises to hand out">
      <p className="lead">
        A car with a hidden fault, for a trainee to find. What it is never leaves the server before the
        verdict.
      </p>
      <TeachGate>
        <Exercises />
      </TeachGate>
    </TitledSheet>
  );
}

async function askExercises(): Promise<readonly ExerciseHead[] | string> {
  const reply = await serverDoor.ask({ method: "GET", path: "/api/v1/exercises" });
  return readReply(reply, ExerciseList)?.exercises ?? failureWords(reply);
}

function Exercises() {
  const [heads, setHeads] = useState<readonly ExerciseHead[]>();
  const [trouble, setTrouble] = useState<string>();
  const [kept, setKept, ready] = useDraft("teach/courses");
  const courses = coursesOfDraft(kept);
  const show = useCallback((loaded: readonly ExerciseHead[] | string) => {
    if (typeof loaded === "string") setTrouble(loaded);
    else {
      setTrouble(undefined);
      setHeads(loaded);
    }
  }, []);
  useEffect(() => {
    let gone = false;
    void askExercises().then((loaded) => !gone && show(loaded));
    return () => {
      gone = true;
    };
  }, [show]);
  const load = async () => show(await askExercises());
  const keep = (next: typeof courses) => setKept(JSON.stringify(next));
  return (
    <>
      {trouble !== undefined && (
        <p className="trouble" role="alert">
          {trouble}
        </p>
      )}
      <SheetPart id="exercises" title="Exercises">
        {heads === undefined && trouble === undefined && <p role="status">Looking ...</p>}
        {heads?.length === 0 && (
          <p className="soft">None yet. Set one, have one drawn, or take in the twelve ready ones below.</p>
        )}
        <ul className="plain-list">
          {(heads ?? []).map((head) => (
            <ExerciseLine
              key={head.id}
              head={head}
              when={momentWords(head.changedAt)}
              onChanged={() => void load()}
            />
          ))}
        </ul>
        {heads !== undefined && (
          <ExerciseFiles
            heads={heads}
            onTaken={(course) => {
              if (course !== undefined) keep(withCourse(courses, course));
              void load();
            }}
          />
        )}
      </SheetPart>
      {heads !== undefined && heads.length > 0 && ready && (
        <CoursePart heads={heads} courses={courses} onCourses={keep} />
      )}
      <p>
        <Link href="/teach/board" prefetch={false}>
          How the class did
        </Link>
      </p>
      <nav className="next-bar always" aria-label="Next">
        <Link className="button main" href="/teach/exercise">
          Set or draw an exercise
        </Link>
      </nav>
    </>
  );
}
