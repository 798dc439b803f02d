import { z } from "zod";
import type { Entry, EntryOf } from "../case/entries.ts";
import type { Answer } from "../engine/index.ts";
import { CHECK_MADE, PART_ORDERED, type Step } from "./attempt.ts";
import { exerciseResult, type ReadyExercise, toldAnswers } from "./exercise-car.ts";
import type { Exercise } from "./exercise.ts";
import { rampMinutes, stepTakes } from "./ramp-minutes.ts";

/*
 * An attempt is kept as entries, as a case is, and its state is the same fold. Two kinds are its own, and without effect on the
 * fold: what was made, and what was ordered. Their order alone is what is scored.
 */

const CheckMade = z.looseObject({ kind: z.literal(CHECK_MADE), check: z.string() });
const PartOrdered = z.looseObject({ kind: z.literal(PART_ORDERED), repair: z.string() });

/**
 * Kinds that a trainee writes without a result in them; everything else is made where the hidden car is known. How the car stands
 * follows from the checks that were made, so that minutes cannot be saved by saying that it stands otherwise.
 */
export const TRAINEE_KINDS: ReadonlySet<string> = new Set([
  "told",
  "refused",
  "note",
  "not-possible",
  "cautions-read",
]);

/** What every entry of one delivery has: whose attempt, when, by whom. */
export interface EntryHead {
  readonly caseId: string;
  readonly at: string;
  readonly by: string;
}

/** The entries that an attempt begins with: the car, and what the customer says. None says anything of what is hidden. */
export function openingEntries(
  exercise: Omit<Exercise, "hidden">,
  head: EntryHead,
  version: string,
): Entry[] {
  const { release, car, vehicle, customer, text, lately } = exercise;
  const opened: EntryOf<"opened"> = {
    ...head,
    id: "opened",
    kind: "opened",
    release,
    knowledgeVersion: version,
    car,
    customer,
    vehicle,
    invented: true,
  };
  const told: EntryOf<"told">[] = text === "" ? [] : [{ ...head, id: "told", kind: "told", text }];
  const contexts = lately.map((finding): Answer => ({ finding, state: "present", by: "report" }));
  const said = [...toldAnswers(exercise), ...contexts].map((answer, k) =>
    answered(answer, { ...head, id: `said-${k}` }),
  );
  return [opened, ...told, ...said];
}

/** A step of a trainee, with the id that was made for it on the device. */
export type NewStep =
  | { readonly kind: "check"; readonly id: string; readonly check: string; readonly cautionsRead: boolean }
  | { readonly kind: "order"; readonly id: string; readonly repair: string };

/**
 * The entries of a check that is made: that its cautions were read, that it was made, how the car stands for it, what it finds.
 *
 * Errors: `unknown-id` for a check that cannot be made on this car.
 */
export function checkEntries(
  ready: ReadyExercise,
  step: Extract<NewStep, { kind: "check" }>,
  before: readonly Step[],
  head: EntryHead,
): Entry[] {
  const { id, check } = step;
  const then = rampMinutes(ready.grounded, before);
  const takes = stepTakes(ready.grounded, check, then.setUp);
  const question = check.startsWith("ask:");
  const entries: Entry[] = [];
  if (step.cautionsRead && !question) {
    const read = check.split("@")[0] ?? check;
    entries.push({ ...head, id: `${id}-cautions`, kind: "cautions-read", check: read });
  }
  entries.push({ ...head, id, kind: CHECK_MADE, check, minutes: takes.minutes } as Entry);
  if (takes.setUp !== then.setUp)
    entries.push({ ...head, id: `${id}-car`, kind: "set-up", setUp: takes.setUp });
  exerciseResult(ready, check).forEach((answer, k) => {
    entries.push({
      ...answered(answer, { ...head, id: `${id}-${k}` }),
      ...(!question && { check }),
    });
  });
  return entries;
}

export function orderEntry(step: Extract<NewStep, { kind: "order" }>, head: EntryHead): Entry {
  return { ...head, id: step.id, kind: PART_ORDERED, repair: step.repair } as Entry;
}

/** The steps that entries tell of, in the order in which they were kept. */
export function stepsOf(entries: readonly Entry[]): Step[] {
  return entries.flatMap((entry): Step[] => {
    if (entry.kind === "cautions-read")
      return [{ kind: "cautions-read", check: (entry as EntryOf<"cautions-read">).check }];
    const made = CheckMade.safeParse(entry);
    if (made.success) return [{ kind: "check", id: made.data.check }];
    const ordered = PartOrdered.safeParse(entry);
    return ordered.success ? [{ kind: "ordered", repair: ordered.data.repair }] : [];
  });
}

/** The entries that a delivery made under this id: the same check gives the same ones, however often it is sent. */
export function entriesOfStep(entries: readonly Entry[], id: string): Entry[] {
  const belongs = new RegExp(`^${id}(-(cautions|car|\\d+))?$`);
  return entries.filter((entry) => belongs.test(entry.id));
}

function answered(answer: Answer, head: EntryHead & { readonly id: string }): EntryOf<"answered"> {
  const { finding, state, level, by } = answer;
  return { ...head, kind: "answered", finding, state, how: by, ...(level !== undefined && { level }) };
}
