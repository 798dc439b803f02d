import { z } from "zod";
import { type Attempt, Conclusion } from "./attempt.ts";
import { placedCheck, type ReadyExercise } from "./exercise-car.ts";
import { type Replay, replayAttempt } from "./replay.ts";
import { type Score, scoreAttempt } from "./score.ts";

const minutes = z.number().min(0);
const flag = z.boolean().default(false);

/** One check of an attempt as boards and tables need it; going through an attempt again takes too long for a whole class. */
export const KeptStep = z.object({
  /** `check@place` or `ask:finding`. */
  check: z.string(),
  /** With bringing the car into the set-up. */
  minutes,
  /** Of these, for the set-up. */
  setUpMinutes: minutes,
  /** Against the best choice then. */
  lost: minutes,
  /** The best choice then; left out when nothing was left that tells anything. */
  best: z.string().exactOptional(),
  repeated: flag,
  afterProof: flag,
  unsafe: flag,
  cautionSkipped: flag,
});
export type KeptStep = z.infer<typeof KeptStep>;

const KeptScore = z.object({
  right: z.boolean().optional(),
  rightPart: z.boolean().optional(),
  complete: z.boolean().optional(),
  minutes,
  bestMinutes: minutes.default(0),
  lostMinutes: minutes.default(0),
  wrongParts: z.array(z.string()).default([]),
  unsafe: z.array(z.string()).default([]),
  cautionsSkipped: z.array(z.string()).default([]),
  jumped: flag,
  afterProof: minutes.default(0),
  brier: z.number().min(0).max(1).optional(),
});

/** What is kept of an attempt once it has ended: its score, the verdict, and its steps. */
export interface KeptResult {
  readonly score: Score;
  /** Undefined in what was kept before this was. */
  readonly verdict?: Conclusion;
  readonly steps?: readonly KeptStep[];
  /** The check that the reasoning would still have made when the verdict came too early. */
  readonly next?: string;
}

const KeptText = z.object({
  verdict: Conclusion.exactOptional(),
  steps: z.array(KeptStep).exactOptional(),
  next: z.string().exactOptional(),
});

/** An attempt that has ended, scored, with its steps beside the best choices. Errors as `replayAttempt`. */
export function keptResult(ready: ReadyExercise, attempt: Attempt): KeptResult {
  const replay = replayAttempt(ready, attempt.steps);
  const score = scoreAttempt(ready, attempt, replay);
  const [next] = replay.left;
  return {
    score,
    ...(attempt.conclusion !== undefined && { verdict: attempt.conclusion }),
    steps: replay.checks.map((step) => keptStep(ready, step)),
    ...(score.jumped && next !== undefined && { next: next.id }),
  };
}

function keptStep({ grounded }: ReadyExercise, made: Replay["checks"][number]): KeptStep {
  const own = made.id.startsWith("ask:") ? made.minutes : placedCheck(grounded, made.id).check.minutes;
  return {
    check: made.id,
    minutes: made.minutes,
    setUpMinutes: Math.max(0, made.minutes - own),
    lost: made.lost,
    ...(made.best !== undefined && { best: made.best.id }),
    repeated: made.repeated,
    afterProof: made.afterProof,
    unsafe: made.forbidden,
    cautionSkipped: made.cautionSkipped,
  };
}

/** A result as one text: the score's own fields, and the rest beside them. */
export function resultText({ score, ...rest }: KeptResult): string {
  return JSON.stringify({ ...score, ...rest });
}

/** A result from its text; what older ones do not hold is left out. */
export function readResult(text: string): KeptResult {
  const json: unknown = JSON.parse(text);
  const open = { right: undefined, rightPart: undefined, complete: undefined, brier: undefined };
  return { score: { ...open, ...KeptScore.parse(json) }, ...KeptText.parse(json) };
}
