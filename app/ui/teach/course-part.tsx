"use client";
import { useState } from "react";
import { serverDoor } from "../../sync/door.ts";
import { failureWords } from "../../sync/failure-words.ts";
import { readReply } from "../../sync/read-reply.ts";
import { momentWords } from "../../text/moment.ts";
import { Choice } from "../choice.tsx";
import { Fold } from "../fold.tsx";
import { saveJson } from "../save-file.ts";
import { SheetPart } from "../sheet-part.tsx";
import { TypedField } from "../typed-field.tsx";
import { type CourseHere, withCourse } from "./courses.ts";
import { afterDays, DAYS, type Days, fileName } from "./hand-out-part.tsx";
import { type ExerciseHead, MadeHandOut } from "./replies.ts";
import { courseOf } from "./take-in.ts";

interface Props {
  readonly heads: readonly ExerciseHead[];
  readonly courses: readonly CourseHere[];
  readonly onCourses: (courses: readonly CourseHere[]) => void;
}

/** Several exercises under one name: as a file, or handed out together. */
export function CoursePart({ heads, courses, onCourses }: Props) {
  return (
    <SheetPart id="courses" title="Courses">
      <p className="small soft">
        Several exercises in an order. The lists are kept in this browser; save a course as a file to take it
        elsewhere.
      </p>
      {courses.map((course) => (
        <Fold
          key={course.name}
          className="course"
          title={
            <>
              {course.name} <span className="soft">({course.exercises.length})</span>
            </>
          }
        >
          <OneCourse
            course={course}
            heads={heads}
            onRemove={() => onCourses(courses.filter((c) => c !== course))}
          />
        </Fold>
      ))}
      <Fold title="Put a course together">
        <NewCourse heads={heads} onMade={(course) => onCourses(withCourse(courses, course))} />
      </Fold>
    </SheetPart>
  );
}

function NewCourse({
  heads,
  onMade,
}: {
  readonly heads: readonly ExerciseHead[];
  readonly onMade: (course: CourseHere) => void;
}) {
  const [name, setName] = useState("");
  const [picked, setPicked] = useState<readonly string[]>([]);
  return (
    <>
      <TypedField id="course-name" label="Name of the course" text value={name} onChange={setName} />
      <p className="label">Exercises, in the order in which they are ticked</p>
      {heads.map(({ id, name: exercise }) => {
        const at = picked.indexOf(id);
        return (
          <label key={id} className="tick">
            <input
              type="checkbox"
              checked={at >= 0}
              onChange={() => setPicked(at < 0 ? [...picked, id] : picked.filter((p) => p !== id))}
            />
            {exercise} {at >= 0 && <span className="soft">({at + 1})</span>}
          </label>
        );
      })}
      <button
        type="button"
        disabled={name.trim() === "" || picked.length === 0}
        onClick={() => {
          onMade({ name: name.trim(), exercises: [...picked] });
          setName("");
          setPicked([]);
        }}
      >
        Keep this course
      </button>
    </>
  );
}

/** An exercise of a course as it was handed out: what is chosen for the next time changes nothing of it. */
interface HandedOutOne extends Pick<MadeHandOut, "code" | "expiresAt"> {
  readonly name: string;
}

function OneCourse({
  course,
  heads,
  onRemove,
}: {
  readonly course: CourseHere;
  readonly heads: readonly ExerciseHead[];
  readonly onRemove: () => void;
}) {
  const [days, setDays] = useState<Days>("30");
  const [busy, setBusy] = useState(false);
  const [failed, setFailed] = useState<string>();
  const [codes, setCodes] = useState<readonly HandedOutOne[]>([]);
  const own = course.exercises.flatMap((id) => heads.find((head) => head.id === id) ?? []);
  const gone = course.exercises.length - own.length;

  const working = async (work: () => Promise<string | undefined>) => {
    setBusy(true);
    setFailed(undefined);
    setFailed(await work());
    setBusy(false);
  };
  const save = async () => {
    const made = await courseOf(course.name, own);
    if ("failed" in made) return made.failed;
    saveJson(fileName(course.name), made.course);
    return undefined;
  };
  const handOut = async () => {
    const made: HandedOutOne[] = [];
    const expiresAt = afterDays(days);
    for (const { id, name } of own) {
      const reply = await serverDoor.ask({
        method: "POST",
        path: `/api/v1/exercises/${encodeURIComponent(id)}/hand-outs`,
        body: { expiresAt, course: course.name },
      });
      const one = readReply(reply, MadeHandOut);
      if (one === undefined) return `"${name}" could not be handed out: ${failureWords(reply)}`;
      made.push({ name, code: one.code, expiresAt: one.expiresAt });
      setCodes([...made]);
    }
    return undefined;
  };
  return (
    <>
      <ol>
        {own.map(({ id, name }) => (
          <li key={id}>{name}</li>
        ))}
      </ol>
      {gone > 0 && <p className="notice">{gone} of its exercises are no longer there.</p>}
      <div className="fields">
        <Choice
          id={`course-days-${fileName(course.name)}`}
          label="It can be begun for"
          value={days}
          options={DAYS}
          onChange={setDays}
        />
      </div>
      <p className="row">
        <button type="button" disabled={busy || own.length === 0} onClick={() => void working(handOut)}>
          Hand all of it out
        </button>
        <button type="button" disabled={busy || own.length === 0} onClick={() => void working(save)}>
          Save as a file
        </button>
        <button type="button" className="plain" disabled={busy} onClick={onRemove}>
          Forget the list
        </button>
      </p>
      {failed !== undefined && (
        <p className="trouble" role="alert">
          {failed}
        </p>
      )}
      {codes.length > 0 && (
        <div className="notice">
          <p>
            Codes, to be typed at <span className="code-place">{window.location.host}/exercise</span>:
          </p>
          <ol aria-label="Codes">
            {codes.map(({ name, code, expiresAt }) => (
              <li key={code}>
                <strong className="code">{code}</strong> {name}{" "}
                <span className="small soft">until {momentWords(expiresAt)}</span>
              </li>
            ))}
          </ol>
        </div>
      )}
    </>
  );
}
