import { CornerwiseError } from "../../../lib/errors.ts";
import type { Entry } from "../../../lib/case/entries.ts";
import { type Attempt, attemptEntries, changeAttempt, type Store } from "../../../lib/store/index.ts";
import {
  checkEntries,
  entriesOfStep,
  keptResult,
  orderEntry,
  rampMinutes,
  readResult,
  type ReadyExercise,
  resultText,
  stepsOf,
  TRAINEE_KINDS,
  whyNotHere,
} from "../../../lib/training/index.ts";
import { repairOfSuspect } from "../../../lib/engine/index.ts";
import { ApiProblem } from "../problem.ts";
import type { Handed } from "./attempt-access.ts";
import { badField, readyOf } from "./ready.ts";

/** More checks than anybody makes on one car; each one is gone through again for the score. */
const MOST_CHECKS = 200;

interface At extends Handed {
  readonly store: Store;
  readonly now: string;
}

interface Added {
  readonly entries: readonly Entry[];
  readonly minutes: number;
}

/** What stands on every entry of this delivery: later than all before, whatever the clock says, as time orders them. */
function headOf({ id, name }: Attempt, entries: readonly Entry[], now: string) {
  const last = entries.reduce((latest, { at }) => (at > latest ? at : latest), "");
  const at = now > last ? now : new Date(Date.parse(last) + 1).toISOString();
  return { caseId: id, at, by: name };
}

const over = (): ApiProblem =>
  new ApiProblem("attempt-over", "The attempt has ended with its verdict; nothing can be added.");

/** Runs what may name something that this car does not have. */
function naming<T>(field: string, run: () => T): T {
  try {
    return run();
  } catch (error) {
    if (error instanceof CornerwiseError && error.code === "unknown-id") throw badField(field, error.message);
    throw error;
  }
}

const minutesOf = (ready: ReadyExercise, entries: readonly Entry[]): number =>
  rampMinutes(ready.grounded, stepsOf(entries)).minutes;

/** Makes a check; the same one again, under the same id, is only told again. */
export async function makeCheck(
  { store, now, attempt, handOut }: At,
  step: { readonly id: string; readonly check: string; readonly cautionsRead: boolean },
): Promise<Added> {
  const ready = await readyOf(handOut);
  const { entries } = await changeAttempt(store, attempt.id, now, (held, there) => {
    const made = there.find(({ id }) => id === step.id);
    if (made !== undefined) {
      if ((made as { check?: unknown }).check === step.check) return { add: [] };
      throw new ApiProblem("entry-differs", `Another entry is kept under the id ${step.id}.`);
    }
    if (held.endedAt !== null) throw over();
    return { add: naming("check", () => resultOf(ready, held, there, step, now)) };
  });
  return { entries: entriesOfStep(entries, step.id), minutes: minutesOf(ready, entries) };
}

function resultOf(
  ready: ReadyExercise,
  attempt: Attempt,
  there: readonly Entry[],
  step: { readonly id: string; readonly check: string; readonly cautionsRead: boolean },
  now: string,
): Entry[] {
  const steps = stepsOf(there);
  const why = whyNotHere(ready, step.check);
  if (why !== undefined) {
    throw new ApiProblem("not-possible-here", `This check cannot be made in this exercise: ${why}.`);
  }
  const { minutes } = rampMinutes(ready.grounded, [...steps, { kind: "check", id: step.check }]);
  const most = ready.exercise.terms.mostMinutes;
  if (most !== undefined && minutes > most) {
    throw new ApiProblem(
      "time-over",
      `With this check it would be ${minutes} minutes on the ramp, and ${most} is all there is. Make a shorter one, or give your verdict.`,
    );
  }
  if (steps.filter(({ kind }) => kind === "check").length >= MOST_CHECKS) {
    throw new ApiProblem("attempt-over", `${MOST_CHECKS} checks were made. Give your verdict.`);
  }
  return checkEntries(ready, { kind: "check", ...step }, steps, headOf(attempt, there, now));
}

/** Keeps entries that carry no result. */
export async function addEntries(
  { store, now, attempt, handOut }: At,
  entries: readonly Entry[],
): Promise<Added> {
  const wrong = entries.findIndex(({ kind }) => !TRAINEE_KINDS.has(kind));
  if (wrong >= 0) {
    throw badField(
      `entries.${wrong}.kind`,
      "results come from checks alone; notes, cautions that were read and checks that were not possible can be added.",
    );
  }
  const stray = entries.findIndex(({ caseId }) => caseId !== attempt.id);
  if (stray >= 0) throw badField(`entries.${stray}.caseId`, "give the id of this attempt.");
  const ready = await readyOf(handOut);
  const kept = await changeAttempt(store, attempt.id, now, () => ({ add: entries }));
  return { entries, minutes: minutesOf(ready, kept.entries) };
}

/** Keeps that a part was ordered. */
export async function orderPart(
  { store, now, attempt, handOut }: At,
  order: { readonly id: string; readonly repair: string },
): Promise<Added> {
  const ready = await readyOf(handOut);
  if (!ready.grounded.suspects.some((suspect) => repairOfSuspect(suspect) === order.repair)) {
    throw badField("repair", "this car has no such part there; take one of its parts.");
  }
  const { entries } = await changeAttempt(store, attempt.id, now, (held, there) => {
    const made = there.find(({ id }) => id === order.id);
    if ((made as { repair?: unknown } | undefined)?.repair === order.repair) return { add: [] };
    return { add: [orderEntry({ kind: "order", ...order }, headOf(held, there, now))] };
  });
  return {
    entries: entries.filter(({ id }) => id === order.id),
    minutes: minutesOf(ready, entries),
  };
}

interface Verdict {
  readonly id: string;
  readonly suspects: readonly string[];
  readonly confidence: number;
  readonly note?: string;
}

/** Ends an attempt and scores it; the same verdict again is only told again. Weighing takes a while, so it is done before the attempt is locked. */
export async function giveVerdict(
  { store, now, attempt, handOut }: At,
  verdict: Verdict,
): Promise<{ readonly endedAt: string; readonly score: unknown }> {
  const ready = await readyOf(handOut);
  const unknown = verdict.suspects.findIndex((id) => !ready.grounded.suspects.some((s) => s.id === id));
  if (unknown >= 0) {
    throw badField(`suspects.${unknown}`, "this car has no such fault there; take one of its suspects.");
  }
  const given = (entries: readonly Entry[]): boolean =>
    entries.some(({ kind, id }) => kind === "verdict" && id === verdict.id);
  const there = await attemptEntries(store, attempt.id);
  const { suspects, confidence } = verdict;
  const result =
    given(there) || attempt.endedAt !== null
      ? undefined
      : keptResult(ready, {
          steps: stepsOf(there),
          conclusion: { suspects: [...suspects], confidence },
        });
  const done = await changeAttempt(store, attempt.id, now, (held, entries) => {
    // The same may have come twice at once: who comes second is told what the first one was.
    if (given(entries)) return { add: [] };
    if (held.endedAt !== null || result === undefined) throw over();
    if (entries.length !== there.length) {
      throw new ApiProblem(
        "changed-meanwhile",
        "Something was added from another window meanwhile. Look at it, then give the verdict again.",
      );
    }
    const entry = { ...headOf(held, entries, now), kind: "verdict", proof: [], ...verdict } as Entry;
    return { add: [entry], score: resultText(result) };
  });
  const { endedAt, score } = done.attempt;
  if (endedAt === null || score === null) throw over();
  return { endedAt, score: readResult(score).score };
}
