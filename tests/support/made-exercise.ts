import {
  changeAttempt,
  hashOfToken,
  keepExercise,
  makeHandOut,
  startAttempt,
  type Store,
} from "../../lib/store/index.ts";
import { Exercise, openingEntries } from "../../lib/training/index.ts";
import { made, opening, second } from "./made-entries.ts";

/** A frozen release: what its checks find stays as it is. */
const RELEASE = "1.2.0";

/** Unlike any other number or word in an answer. */
export const SEED = 3_141_592_653;
export const NEVER = "2999-01-01T00:00:00.000Z";

/** An invented exercise: a knock, because of one anti-roll bar link. */
export function madeExercise(fields: Partial<Exercise> = {}): Exercise {
  return Exercise.parse({
    format: "cornerwise-exercise",
    form: 1,
    id: "worn-link-front-left",
    name: "A knock (invented)",
    release: RELEASE,
    car: { drive: "front", front: { layout: "strut" }, odometerKm: 120_000, ageYears: 9 },
    text: "It knocks over small bumps.",
    said: [
      { finding: "noise", state: "present" },
      { finding: "noise:small-bumps", state: "present" },
    ],
    hidden: { seed: SEED, faults: [{ fault: "anti-roll-bar-link-worn", place: "front-left" }] },
    ...fields,
  });
}

/** Keeps an exercise of this owner and hands it out, with ids that follow from its own. */
export async function handOut(
  store: Store,
  id: string,
  ownerId: string | null,
  exercise = madeExercise(),
): Promise<{ readonly code: string; readonly token: string; readonly handOutId: string }> {
  const body = JSON.stringify(exercise);
  await keepExercise(store, { id, ownerId, name: exercise.name, body, now: second(1) });
  const made = {
    code: `C0DE${id}`.toUpperCase().replaceAll("-", ""),
    token: `token-of-${id}`,
    handOutId: `hand-out-${id}`,
  };
  await makeHandOut(store, {
    ...made,
    id: made.handOutId,
    exerciseId: id,
    body,
    course: null,
    madeBy: ownerId,
    madeAt: second(2),
    expiresAt: NEVER,
  });
  return made;
}

/** Begins an attempt at what `handOut` handed out: of an account, or of the browser with this key. */
export async function begin(
  store: Store,
  id: string,
  exerciseId: string,
  who: { readonly traineeId: string } | { readonly key: string },
): Promise<void> {
  const head = { caseId: id, at: second(3), by: "Tom" };
  await startAttempt(
    store,
    {
      id,
      exerciseId,
      handOutId: `hand-out-${exerciseId}`,
      name: "Tom",
      traineeId: "traineeId" in who ? who.traineeId : null,
      tokenHash: "key" in who ? hashOfToken(who.key) : null,
    },
    openingEntries(madeExercise(), head, RELEASE),
    { now: second(3), most: 1000 },
  );
}

/** An exercise that was handed out, an attempt that has ended, and one that has not. */
export async function fillExercises(store: Store): Promise<void> {
  await handOut(store, "e1", "olga");
  const from = { handOutId: "hand-out-e1", exerciseId: "e1", name: "Tom" };
  const begun = { now: second(3), most: 9 };
  const checked = made("a1", "m", second(4), { kind: "check-made", check: "c@front" });
  await startAttempt(
    store,
    { ...from, id: "a1", traineeId: "tom", tokenHash: null },
    [opening("a1"), checked],
    begun,
  );
  await startAttempt(
    store,
    { ...from, id: "a2", traineeId: null, tokenHash: "f".repeat(64) },
    [opening("a2")],
    begun,
  );
  const verdict = made("a1", "v", second(5), { kind: "verdict", suspects: [], proof: [], confidence: 0.5 });
  await changeAttempt(store, "a1", second(6), () => ({ add: [verdict], score: '{"minutes":3}' }));
}
