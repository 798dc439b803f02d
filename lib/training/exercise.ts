import { z } from "zod";
import { CASE_LIMITS } from "../case/case-file.ts";
import { CaseCar, KnowledgeId } from "../case/entries.ts";
import { readJson } from "../case/read-json.ts";
import { CornerwiseError } from "../errors.ts";
import { Id } from "../knowledge/schema/common.ts";

/** Says that a JSON file holds an exercise of ours. */
export const EXERCISE_FORMAT = "cornerwise-exercise";
/** The same of a file with several. */
export const COURSE_FORMAT = "cornerwise-course";
/** Raised when an older reader could no longer read the form rightly. */
export const EXERCISE_FORM = 1;

/** A finding with its state, as told or as an instructor wants it found. */
const Stated = z.strictObject({
  finding: KnowledgeId,
  state: z.enum(["present", "absent"]),
  level: Id.exactOptional(),
});

/** What is wrong with the car. None of it may reach a trainee before the verdict. */
export const Hidden = z.strictObject({
  faults: z
    .array(
      z.strictObject({
        fault: Id,
        place: Id,
        /** False for innocent wear: there, but not behind the complaint. */
        causes: z.boolean().default(true),
      }),
    )
    .min(1)
    .max(8)
    .refine((faults) => faults.some((f) => f.causes), "at least one fault must cause the complaint"),
  /** Fixes the result of every check. */
  seed: z.number().int().min(0).max(4_294_967_295),
  /** Results that the instructor wants, whatever the model says. */
  results: z.array(Stated).max(100).default([]),
});

/** What a trainee has to work with. */
const Terms = z.strictObject({
  lift: z.boolean().default(true),
  helper: z.boolean().default(true),
  /** Tools that are not there, as checks name them. */
  missingTools: z.array(z.string().max(80)).max(40).default([]),
  /** Minutes on the ramp; none when left out. */
  mostMinutes: z.number().positive().max(1000).exactOptional(),
  /** Proposals of the next check are shown. */
  hints: z.boolean().default(true),
  /** The ranking is shown. */
  ranking: z.boolean().default(true),
  /** Share, 0..1, of the owner's further answers that are as it is with any car; the knowledge's own when left out. */
  unreliable: z.number().min(0).max(1).exactOptional(),
});

/** An exercise with a hidden fault, invented. */
export const Exercise = z.strictObject({
  format: z.literal(EXERCISE_FORMAT),
  form: z.literal(EXERCISE_FORM),
  id: Id,
  name: z.string().min(1).max(120),
  /** For the trainee; says nothing of what is wrong. */
  about: z.string().max(2000).default(""),
  /** Release that it is worked with: version or SHA-256. */
  release: z.string().min(1).max(100),
  car: CaseCar,
  vehicle: z.string().max(200).default("demo car (invented)"),
  customer: z.string().max(200).default("invented"),
  /** What happened to the car lately. */
  lately: z.array(Id).max(20).default([]),
  /** What the customer says: in words, and as findings. The first complaint that is present is the one to work on. */
  text: z.string().max(4000).default(""),
  said: z.array(Stated).min(1).max(60),
  terms: Terms.prefault({}),
  hidden: Hidden,
});
export type Exercise = z.infer<typeof Exercise>;

/** Exercises in an order, as one file. */
export const Course = z.strictObject({
  format: z.literal(COURSE_FORMAT),
  form: z.literal(EXERCISE_FORM),
  name: z.string().min(1).max(120),
  about: z.string().max(2000).default(""),
  exercises: z.array(Exercise).min(1).max(100),
});
export type Course = z.infer<typeof Course>;

/** What a trainee may see while working. */
export type OpenExercise = Omit<Exercise, "hidden">;

/** The exercise without anything that gives the fault away: listed field by field, so that a new field stays in until it is let out. */
export function openPart(exercise: Exercise): OpenExercise {
  const { format, form, id, name, about, release, car, vehicle, customer, lately, text, said, terms } =
    exercise;
  return { format, form, id, name, about, release, car, vehicle, customer, lately, text, said, terms };
}

/**
 * An exercise from a file.
 *
 * Errors: `not-readable` for text that is not JSON, `bad-request` for what is too long, nests too deep or does not follow the
 * form, naming each field.
 */
export function readExercise(text: string): Exercise {
  return parsed(Exercise, jsonOf(text));
}

/** A course from a file; errors as with an exercise. */
export function readCourse(text: string): Course {
  return parsed(Course, jsonOf(text));
}

/** Exercises from a file that holds one of them, or a course. */
export interface ExercisesFile {
  /** Undefined for a single exercise. */
  readonly course: Pick<Course, "name" | "about"> | undefined;
  readonly exercises: readonly Exercise[];
}

/** Exercises from a file of either kind, by its own word of what it is; errors as with an exercise. */
export function readExercisesFile(text: string): ExercisesFile {
  const json = jsonOf(text);
  const format =
    typeof json === "object" && json !== null ? (json as { format?: unknown }).format : undefined;
  if (format === COURSE_FORMAT) {
    const { name, about, exercises } = parsed(Course, json);
    return { course: { name, about }, exercises };
  }
  if (format === EXERCISE_FORMAT) return { course: undefined, exercises: [parsed(Exercise, json)] };
  throw new CornerwiseError(
    "bad-request",
    `format: the file is no exercise and no course; its "format" must be "${EXERCISE_FORMAT}" or "${COURSE_FORMAT}".`,
    { field: "format" },
  );
}

const jsonOf = (text: string): unknown => readJson(text, CASE_LIMITS);

function parsed<S extends z.ZodType>(schema: S, json: unknown): z.infer<S> {
  const result = schema.safeParse(json);
  if (result.success) return result.data;
  const problems = result.error.issues.map((i) => `${i.path.join(".") || "the file"}: ${i.message}`);
  throw new CornerwiseError("bad-request", problems.slice(0, 10).join("; "), { problems });
}
