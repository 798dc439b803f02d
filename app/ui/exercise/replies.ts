import { z } from "zod";
import { Exercise } from "../../../lib/training/exercise.ts";

/* What the server answers about exercises; what is not listed is passed over. */

const Score = z.object({
  right: z.boolean().optional(),
  rightPart: z.boolean().optional(),
  complete: z.boolean().optional(),
  minutes: z.number(),
  bestMinutes: z.number(),
  lostMinutes: z.number(),
  wrongParts: z.array(z.string()),
  unsafe: z.array(z.string()),
  cautionsSkipped: z.array(z.string()),
  jumped: z.boolean(),
  afterProof: z.number(),
  brier: z.number().optional(),
});
export type Score = z.infer<typeof Score>;

export const AttemptRow = z.object({
  id: z.string(),
  exercise: z.object({ id: z.string(), name: z.string() }),
  course: z.string().nullable(),
  trainee: z.object({ id: z.string().nullable(), name: z.string() }),
  startedAt: z.string(),
  endedAt: z.string().nullable(),
  checks: z.number(),
  score: Score.nullable(),
});
export type AttemptRow = z.infer<typeof AttemptRow>;

export const OwnAttemptsReply = z.object({ attempts: z.array(AttemptRow) });

export const BegunReply = z.object({ id: z.string() });

export const WorkedReply = z.object({
  id: z.string(),
  exercise: Exercise.omit({ hidden: true }),
  name: z.string(),
  entries: z.array(z.unknown()),
  minutes: z.number(),
  endedAt: z.string().nullable(),
});
export type WorkedReply = z.infer<typeof WorkedReply>;

export const AddedReply = z.object({ entries: z.array(z.unknown()), minutes: z.number() });

const Found = z.object({
  finding: z.string(),
  state: z.enum(["present", "absent", "unknown"]),
  level: z.string().optional(),
  by: z.enum(["report", "check"]),
});
const Chance = z.object({ repair: z.string(), chance: z.number() });
const Best = z.object({ id: z.string(), minutes: z.number(), gainBits: z.number() });

const Step = z.object({
  id: z.string(),
  minutes: z.number(),
  found: z.array(Found),
  best: Best.optional(),
  gainBits: z.number(),
  lost: z.number(),
  repeated: z.boolean(),
  forbidden: z.boolean(),
  cautionSkipped: z.boolean(),
  afterProof: z.boolean(),
  inFront: Chance.optional(),
});
export type DebriefStep = z.infer<typeof Step>;

export const DebriefReply = z.object({
  attempt: AttemptRow,
  exercise: Exercise,
  verdict: z
    .object({ suspects: z.array(z.string()), confidence: z.number(), note: z.string().optional() })
    .nullable(),
  debrief: z.object({
    score: Score,
    steps: z.array(Step),
    causes: z.array(z.string()),
    innocent: z.array(z.string()),
    orders: z.array(z.string()),
    atStart: Chance.optional(),
    bestWay: z.array(z.object({ id: z.string(), minutes: z.number(), found: z.array(Found) })),
    left: Best.optional(),
  }),
});
export type DebriefReply = z.infer<typeof DebriefReply>;
