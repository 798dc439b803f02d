import { z } from "zod";

/** Exercises in an order under one name. */
const CourseHere = z.object({ name: z.string(), exercises: z.array(z.string()) });
export type CourseHere = z.infer<typeof CourseHere>;

/** Courses as this browser keeps them; what cannot be read is none. */
export function coursesOfDraft(text: string): readonly CourseHere[] {
  if (text === "") return [];
  try {
    return z.array(CourseHere).parse(JSON.parse(text));
  } catch {
    return [];
  }
}

/** With a course of that name in it, in place of an older one. */
export function withCourse(courses: readonly CourseHere[], course: CourseHere): readonly CourseHere[] {
  const at = courses.findIndex((c) => c.name === course.name);
  return at < 0 ? [...courses, course] : courses.with(at, course);
}
