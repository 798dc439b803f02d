import {
  askNext,
  booking,
  type Course,
  drawCourse,
  driveAdvice,
  type LayQuestion,
  partsReady,
  workshopCosts,
} from "../../lib/engine/index.ts";
import type { Weighing } from "../../lib/engine/index.ts";
import { seededUniform } from "../../lib/maths/seeded-uniform.ts";
import type { BeforeSeen, Booked, Questions } from "./protocol.ts";
import { askedFor, groundOf, keptOf, loaded, pause, weighingOf } from "./worked-out.ts";

/** Visits drawn so far for a weighing, by what they were drawn with. */
const drawn = new WeakMap<Weighing, Map<string, Drawn>>();

interface Drawn {
  readonly courses: Course[];
  readonly uniform: () => number;
}

/** The next questions to the customer, best first. */
export function questions({ options, ...situation }: Questions["questions"]["ask"]): readonly LayQuestion[] {
  return askNext(groundOf(situation), situation.answers, weighingOf(situation), options);
}

/** Whether to drive and which parts to have ready; undefined when the knowledge says nothing of it. */
export function advise({ own, ...situation }: Questions["advise"]["ask"]): BeforeSeen | undefined {
  const knowledge = loaded();
  if (knowledge.advice === undefined) return undefined;
  const grounded = groundOf(situation);
  const weighing = weighingOf(situation);
  return {
    drive: driveAdvice(grounded, weighing.weighed, knowledge.advice),
    parts: partsReady(grounded, weighing, workshopCosts(knowledge, own), knowledge.advice),
  };
}

/**
 * Plays visits until there are as many as asked for; those of the same situation are kept, so that each question goes on
 * where the one before ended. Undefined when newer answers came meanwhile, or when nobody complains of anything.
 */
export async function book({
  options,
  own,
  visits,
  ...situation
}: Questions["book"]["ask"]): Promise<Booked | undefined> {
  const stillAsked = askedFor(situation);
  await pause();
  if (!stillAsked()) return undefined;
  const grounded = groundOf(situation);
  const weighing = weighingOf(situation);
  const costs = workshopCosts(loaded(), own);
  // One seed: the same answers give the same figures on every device.
  const { courses, uniform } = keptOf(drawn, weighing, JSON.stringify([options, own]), () => ({
    courses: [],
    uniform: seededUniform(1),
  }));
  while (courses.length < visits) {
    const course = drawCourse(grounded, situation.answers, weighing, { ...options, costs, uniform });
    if (course === undefined) return undefined;
    courses.push(course);
    // After each, so that a newer answer never waits for more than one visit.
    await pause();
    if (!stillAsked()) return undefined;
  }
  const told = booking(courses);
  return told && { booking: told, whole: courses.map((c) => c.checking + c.repairing) };
}
