import { z } from "zod";
import { AttemptRow } from "../exercise/replies.ts";

/* What the server answers about a class; what is not listed is passed over. */

const Tally = z.object({
  attempts: z.number(),
  ended: z.number(),
  right: z.number(),
  rightPart: z.number(),
  complete: z.number(),
  minutes: z.number(),
  bestMinutes: z.number(),
  lostMinutes: z.number(),
  wrongParts: z.number(),
  unsafe: z.number(),
  cautionsSkipped: z.number(),
  jumped: z.number(),
  confidence: z.number().optional(),
  brier: z.number().optional(),
});
export type Tally = z.infer<typeof Tally>;

const Cost = z.object({ check: z.string(), attempts: z.number(), minutes: z.number() });
export type Cost = z.infer<typeof Cost>;

const LostIn = z.object({
  repeated: z.number(),
  afterProof: z.number(),
  setUp: z.number(),
  question: z.number(),
  check: z.number(),
});
export type LostIn = z.infer<typeof LostIn>;

const Exercise = z.object({ id: z.string(), name: z.string() });
const Trainee = z.object({ id: z.string().nullable(), name: z.string() });

const Choices = z.object({
  exercises: z.array(Exercise),
  trainees: z.array(Trainee),
  courses: z.array(z.string()),
});
export type Choices = z.infer<typeof Choices>;

export const BoardReply = z.object({
  board: z.object({
    total: Tally,
    exercises: z.array(Exercise.extend(Tally.shape)),
    trainees: z.array(Trainee.extend(Tally.shape)),
    overlooked: z.array(Cost),
    costly: z.array(Cost),
    lostIn: LostIn,
    withoutSteps: z.number(),
  }),
  more: z.boolean(),
  choices: Choices,
  recordStore: z.string().nullable(),
});
export type BoardReply = z.infer<typeof BoardReply>;

const BoardAttempt = AttemptRow.extend({ confidence: z.number().nullable() });
export type BoardAttempt = z.infer<typeof BoardAttempt>;

export const AttemptsReply = z.object({ attempts: z.array(BoardAttempt), next: z.string().nullable() });
export type AttemptsReply = z.infer<typeof AttemptsReply>;

export const SentReply = z.object({
  attempts: z.number(),
  taken: z.number(),
  differing: z.number(),
  refused: z.array(z.object({ id: z.string(), why: z.string() })),
  trouble: z.string().nullable(),
  next: z.string().nullable(),
});
