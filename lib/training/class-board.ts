import type { KeptResult, KeptStep } from "./kept-result.ts";

/** An attempt as the board is told of it. */
export interface BoardAttempt {
  readonly exercise: { readonly id: string; readonly name: string };
  /** By account, or by the name as it was typed: two who type the same name are one. */
  readonly trainee: { readonly id: string | null; readonly name: string };
  /** Undefined until the verdict. */
  readonly result: KeptResult | undefined;
}

/** How some attempts went together. All but `attempts` counts those alone that have ended. */
export interface Tally {
  readonly attempts: number;
  readonly ended: number;
  /** A part behind the complaint was named at its place; and perhaps at another place; and all of them and no other. */
  readonly right: number;
  readonly rightPart: number;
  readonly complete: number;
  /** Sums. Units: minutes on the ramp. */
  readonly minutes: number;
  readonly bestMinutes: number;
  readonly lostMinutes: number;
  /** Parts named or ordered that are in order. */
  readonly wrongParts: number;
  /** Checks that were dangerous as things stood, and those whose cautions were skipped. */
  readonly unsafe: number;
  readonly cautionsSkipped: number;
  /** Attempts whose verdict came before it was proven, while checking on was cheaper. */
  readonly jumped: number;
  /** Means, 0..1, over attempts whose verdict is kept; undefined when there is none. */
  readonly confidence: number | undefined;
  readonly brier: number | undefined;
}

/** Something and the attempts and minutes that it cost. */
export interface Cost {
  readonly check: string;
  /** Attempts in which it happened. */
  readonly attempts: number;
  /** Units: minutes lost against the best choice. */
  readonly minutes: number;
}

/** What minutes are lost in; a step's are counted once, as the first of these that they are. */
export const LOSSES = ["repeated", "afterProof", "setUp", "question", "check"] as const;
export type Loss = (typeof LOSSES)[number];

/** A class seen over its attempts. */
export interface ClassBoard {
  readonly total: Tally;
  /** By name, ties by id. */
  readonly exercises: readonly (Tally & { readonly id: string; readonly name: string })[];
  readonly trainees: readonly (Tally & { readonly id: string | null; readonly name: string })[];
  /** Checks that the best choice would have made and that were not made in the attempt; the dearest first. */
  readonly overlooked: readonly Cost[];
  /** Checks and questions that were made and lost minutes; the dearest first. */
  readonly costly: readonly Cost[];
  /** Units: minutes. */
  readonly lostIn: Readonly<Record<Loss, number>>;
  /** Attempts that ended before their steps were kept: they are in the tallies alone. */
  readonly withoutSteps: number;
}

/** Adds up attempts, in whatever order they come. */
export function classBoard(attempts: readonly BoardAttempt[]): ClassBoard {
  const steps = attempts.flatMap(({ result }) => (result?.steps === undefined ? [] : [result.steps]));
  return {
    total: tally(attempts),
    exercises: grouped(
      attempts,
      ({ exercise }) => exercise.id,
      ({ exercise }) => exercise,
    ),
    trainees: grouped(attempts, traineeKey, ({ trainee }) => trainee),
    overlooked: costs(attempts.map(({ result }) => overlookedIn(result))),
    costly: costs(steps.map(lostBy)),
    lostIn: lostIn(steps.flat()),
    withoutSteps: attempts.filter(({ result }) => result !== undefined && result.steps === undefined).length,
  };
}

function tally(attempts: readonly BoardAttempt[]): Tally {
  const results = attempts.flatMap(({ result }) => result ?? []);
  const scores = results.map(({ score }) => score);
  const sum = (of: (score: (typeof scores)[number]) => number): number =>
    scores.reduce((total, score) => total + of(score), 0);
  return {
    attempts: attempts.length,
    ended: scores.length,
    right: sum(({ right }) => Number(right === true)),
    rightPart: sum(({ rightPart }) => Number(rightPart === true)),
    complete: sum(({ complete }) => Number(complete === true)),
    minutes: sum(({ minutes }) => minutes),
    bestMinutes: sum(({ bestMinutes }) => bestMinutes),
    lostMinutes: sum(({ lostMinutes }) => lostMinutes),
    wrongParts: sum(({ wrongParts }) => wrongParts.length),
    unsafe: sum(({ unsafe }) => unsafe.length),
    cautionsSkipped: sum(({ cautionsSkipped }) => cautionsSkipped.length),
    jumped: sum(({ jumped }) => Number(jumped)),
    confidence: mean(results.flatMap(({ verdict }) => verdict?.confidence ?? [])),
    brier: mean(scores.flatMap(({ brier }) => brier ?? [])),
  };
}

const mean = (values: readonly number[]): number | undefined =>
  values.length === 0 ? undefined : values.reduce((a, b) => a + b, 0) / values.length;

/** Nobody's id has this form: a typed name never passes for an account. */
const traineeKey = ({ trainee: { id, name } }: BoardAttempt): string =>
  id === null ? `typed ${name}` : `account ${id}`;

function grouped<H extends { readonly id: string | null; readonly name: string }>(
  attempts: readonly BoardAttempt[],
  key: (attempt: BoardAttempt) => string,
  head: (attempt: BoardAttempt) => H,
): (Tally & H)[] {
  const groups = new Map<string, BoardAttempt[]>();
  for (const attempt of attempts) {
    const group = groups.get(key(attempt));
    if (group === undefined) groups.set(key(attempt), [attempt]);
    else group.push(attempt);
  }
  return [...groups.values()]
    .flatMap((group) => group.slice(0, 1).map((first) => ({ ...head(first), ...tally(group) })))
    .sort((a, b) => inOrder(a.name, b.name) || inOrder(a.id ?? "", b.id ?? ""));
}

const inOrder = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

type Minutes = ReadonlyMap<string, number>;

function overlookedIn(result: KeptResult | undefined): Minutes {
  const { steps = [], next } = result ?? {};
  const made = new Set(steps.map(({ check }) => check));
  const missed = steps.flatMap(({ best, lost }) => (best === undefined ? [] : [{ check: best, lost }]));
  // A verdict that came too early overlooked its next check; it lost no minutes by it, but the proof.
  const all = next === undefined ? missed : [...missed, { check: next, lost: 0 }];
  return added(all.filter(({ check }) => !made.has(check)));
}

const lostBy = (steps: readonly KeptStep[]): Minutes => added(steps.filter(({ lost }) => lost > 0));

function added(steps: readonly { readonly check: string; readonly lost: number }[]): Minutes {
  const minutes = new Map<string, number>();
  for (const { check, lost } of steps) minutes.set(check, (minutes.get(check) ?? 0) + lost);
  return minutes;
}

function costs(attempts: readonly Minutes[]): Cost[] {
  const all = new Map<string, { attempts: number; minutes: number }>();
  for (const attempt of attempts) {
    for (const [check, minutes] of attempt) {
      const there = all.get(check) ?? { attempts: 0, minutes: 0 };
      all.set(check, { attempts: there.attempts + 1, minutes: there.minutes + minutes });
    }
  }
  return [...all]
    .map(([check, cost]) => ({ check, ...cost }))
    .sort((a, b) => b.minutes - a.minutes || b.attempts - a.attempts || inOrder(a.check, b.check));
}

function lostIn(steps: readonly KeptStep[]): Record<Loss, number> {
  const lost = { repeated: 0, afterProof: 0, setUp: 0, question: 0, check: 0 };
  for (const step of steps) {
    if (step.repeated) lost.repeated += step.lost;
    else if (step.afterProof) lost.afterProof += step.lost;
    else {
      const byCar = Math.min(step.lost, step.setUpMinutes);
      lost.setUp += byCar;
      lost[step.check.startsWith("ask:") ? "question" : "check"] += step.lost - byCar;
    }
  }
  return lost;
}
