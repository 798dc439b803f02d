import {
  type Answer,
  askNext,
  type Booking,
  booking,
  type Course,
  drawCourse,
  type DriveAdvice,
  driveAdvice,
  groundCar,
  type LayQuestion,
  weighing,
  workshopCosts,
} from "../../lib/engine/index.ts";
import type { Knowledge } from "../../lib/knowledge/schema/compiled.ts";
import { seededUniform } from "../../lib/maths/seeded-uniform.ts";
import { readText } from "../../lib/words/index.ts";
import { carOf, type FieldCase } from "./field-cases.ts";

/**
 * Cases that turned out dangerous, and why. Judged by hand from the cause that each source names: a part that holds a wheel, the
 * steering or a brake parted, cracked or about to; a tyre with its belt failing; a broken spring.
 */
export const TURNED_OUT_DANGEROUS: Readonly<Record<string, string>> = {
  c003: "a bush of a front arm gone, the wheel moves when braking",
  c017: "a front ball joint cracked",
  c026: "a broken front spring on the tyre",
  c027: "a tyre whose belt fails",
  c030: "a joint that no longer holds the steering",
  c031: "a broken coil spring",
  c034: "pads worn out and a ball joint badly worn",
  c037: "a bolt of a brake caliper gone",
  c038: "bolts of the front subframe loose",
  c060: "a rear leaf spring broken at its eye",
  c070: "a lower ball joint about to come out",
};

/** What a desk knows of a solved case before anybody has seen the car. */
export interface CaseAdvice {
  readonly advice: DriveAdvice;
  /** The three most telling questions for the customer. */
  readonly questions: readonly LayQuestion[];
  /** Undefined when no visit was played. */
  readonly booked: Booking | undefined;
}

/** What a desk would say from the owner's words alone, and how long it would book by so many visits played ahead. */
export function adviseCase(knowledge: Knowledge, c: FieldCase, visits: number): CaseAdvice {
  const told = readText(knowledge, c.complaint);
  const lately = told.flatMap((p) =>
    p.state === "present" && knowledge.contexts.some((context) => context.id === p.finding)
      ? [p.finding]
      : [],
  );
  const answers = told.map((p): Answer => ({ finding: p.finding, state: p.state, by: "report" }));
  const grounded = groundCar(knowledge, carOf(c), lately);
  const now = weighing(grounded, answers);
  if (knowledge.advice === undefined) throw new Error("the shipped knowledge has advice");
  const uniform = seededUniform(20_261_128);
  const costs = workshopCosts(knowledge);
  const courses = Array.from({ length: visits }, () =>
    drawCourse(grounded, answers, now, { costs, uniform }),
  ).filter((course): course is Course => course !== undefined);
  return {
    advice: driveAdvice(grounded, now.weighed, knowledge.advice),
    questions: askNext(grounded, answers, now, { most: 3, who: "driver" }),
    booked: booking(courses),
  };
}
