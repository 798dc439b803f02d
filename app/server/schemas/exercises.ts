import { z } from "zod";
import { Course, Exercise } from "../../../lib/training/index.ts";
import { Entry, EntryInput } from "./cases.ts";
import { Cursor, lineOfText, Moment, queryNumber } from "./common.ts";

const MadeId = z
  .string()
  .regex(/^[A-Za-z0-9][A-Za-z0-9_-]{0,49}$/, "use letters, digits, hyphens, underscores");
const count = z.number().int().min(0);
const minutes = z.number().min(0).describe("Minutes on the ramp.");

export const IdParams = z.strictObject({ id: z.string().regex(/^[A-Za-z0-9_-]{1,64}$/) });

/** What an instructor sets, hidden part and all. */
export { Course, Exercise };

export const ExerciseHead = z
  .strictObject({
    id: z.string().describe("Id of the server; says nothing of what is in it."),
    ownerId: z.string().nullable().describe("Account of the instructor; null: made without accounts."),
    name: z.string(),
    madeAt: Moment,
    changedAt: Moment,
    version: count,
  })
  .meta({ id: "ExerciseHead" });

export const ExerciseList = z.strictObject({ exercises: z.array(ExerciseHead) });

export const KeptExercise = z.strictObject({ ...ExerciseHead.shape, exercise: Exercise });

export const NewHandOut = z.strictObject({
  expiresAt: Moment,
  course: lineOfText(120).min(1).exactOptional(),
});

export const MadeHandOut = z.strictObject({
  id: z.string(),
  code: z.string().describe("To be typed at /exercise."),
  token: z.string().describe("For a link: /exercise#token. Shown this once."),
  expiresAt: Moment,
});

export const HandOutList = z.strictObject({
  handOuts: z.array(
    z.strictObject({
      id: z.string(),
      code: z.string(),
      course: z.string().nullable(),
      madeBy: z.string().nullable(),
      madeAt: Moment,
      expiresAt: Moment,
      revokedAt: Moment.nullable(),
    }),
  ),
});

/** How an attempt went; ids are those of checks, suspects and repairs of the knowledge. */
export const Score = z
  .strictObject({
    right: z.boolean().exactOptional(),
    rightPart: z.boolean().exactOptional(),
    complete: z.boolean().exactOptional(),
    minutes,
    bestMinutes: minutes,
    lostMinutes: minutes,
    wrongParts: z.array(z.string()),
    unsafe: z.array(z.string()),
    cautionsSkipped: z.array(z.string()),
    jumped: z.boolean(),
    afterProof: minutes,
    brier: z.number().min(0).max(1).exactOptional(),
  })
  .meta({ id: "Score" });

export const AttemptRow = z
  .strictObject({
    id: z.string(),
    exercise: z.strictObject({ id: z.string(), name: z.string() }),
    handOutId: z.string(),
    course: z.string().nullable(),
    trainee: z.strictObject({ id: z.string().nullable(), name: z.string() }),
    startedAt: Moment,
    endedAt: Moment.nullable(),
    checks: count.describe("Checks and questions made."),
    score: Score.nullable().describe("Null until the verdict."),
    confidence: z.number().min(0).max(1).nullable().describe("As it was stated with the verdict."),
  })
  .meta({ id: "AttemptRow" });

/** Which attempts are meant; what is left out does not matter. */
export const AttemptFilter = z.strictObject({
  exercise: IdParams.shape.id.exactOptional(),
  trainee: lineOfText(120).min(1).describe("Id of an account, or a name as it was typed.").exactOptional(),
  course: lineOfText(120).min(1).exactOptional(),
  ended: z.enum(["yes", "no"]).exactOptional(),
  from: Moment.describe("Begun then or later.").exactOptional(),
  until: Moment.describe("Begun before.").exactOptional(),
});

export const AttemptsQuery = z.strictObject({
  ...AttemptFilter.shape,
  after: Cursor.exactOptional(),
  limit: queryNumber(1, 200).exactOptional(),
});

export const AttemptList = z.strictObject({
  attempts: z.array(AttemptRow),
  next: z.string().nullable().describe("Give it as `after` for the next page; null: this is the last."),
});

export const OwnAttempts = z.strictObject({ attempts: z.array(AttemptRow) });

export const NewAttempt = z
  .strictObject({
    id: MadeId.min(8).describe("Made on the device; the same one again changes nothing."),
    code: z
      .string()
      .min(1)
      .max(40)
      .describe("As typed: spaces, hyphens and small letters do not matter.")
      .exactOptional(),
    token: z.string().min(1).max(100).exactOptional(),
    name: lineOfText(80).exactOptional(),
    key: z
      .string()
      .regex(/^[A-Za-z0-9_-]{32}$/, "give 192 bits as base64url")
      .describe("Secret of the browser, for whoever has no account: sent as Bearer from then on.")
      .exactOptional(),
  })
  .refine(({ code, token }) => (code === undefined) !== (token === undefined), "give a code or a token");

export const BegunAttempt = z.strictObject({
  id: z.string(),
  token: z.string().nullable().describe("The key that opens it; null: it is the account's."),
});

/** The exercise without what is hidden. */
const OpenExercise = z.strictObject(Exercise.omit({ hidden: true }).shape).meta({ id: "OpenExercise" });

export const WorkedAttempt = z.strictObject({
  id: z.string(),
  exercise: OpenExercise,
  name: z.string(),
  entries: z.array(Entry).describe("In the order in which they were kept; folded as those of a case."),
  minutes,
  startedAt: Moment,
  endedAt: Moment.nullable(),
});

export const NewCheck = z.strictObject({
  id: MadeId.describe("Made on the device; the same one again gives the same result."),
  check: z
    .string()
    .regex(/^(ask:)?[a-z0-9]+(-[a-z0-9]+)*([:@][a-z0-9]+(-[a-z0-9]+)*)*$/, "give check@place or ask:finding")
    .max(200),
  cautionsRead: z.boolean(),
});

/** What was added, with the minutes used so far. */
export const AddedToAttempt = z.strictObject({ entries: z.array(Entry), minutes });

export const NewAttemptEntries = z.strictObject({ entries: z.array(EntryInput).min(1).max(50) });

export const NewOrder = z.strictObject({
  id: MadeId,
  repair: z
    .string()
    .regex(/^[a-z0-9]+(-[a-z0-9]+)*@[a-z0-9]+(-[a-z0-9]+)*$/, "give part@place")
    .max(200),
});

export const NewVerdict = z.strictObject({
  id: MadeId,
  suspects: z
    .array(
      z
        .string()
        .regex(/^[a-z0-9]+(-[a-z0-9]+)*@[a-z0-9]+(-[a-z0-9]+)*$/, "give fault@place")
        .max(200),
    )
    .max(20),
  confidence: z.number().min(0).max(1),
  note: z.string().min(1).max(4000).exactOptional(),
});

export const Ended = z.strictObject({ endedAt: Moment, score: Score });

const Found = z.strictObject({
  finding: z.string(),
  state: z.enum(["present", "absent", "unknown"]),
  level: z.string().exactOptional(),
  by: z.enum(["report", "check"]),
});
const RepairChance = z.strictObject({ repair: z.string(), chance: z.number().min(0).max(1) });
const BestCheck = z.strictObject({ id: z.string(), minutes, gainBits: z.number() });

export const Debrief = z.strictObject({
  attempt: AttemptRow,
  exercise: Exercise,
  verdict: NewVerdict.omit({ id: true }).nullable(),
  entries: z.array(Entry),
  debrief: z
    .strictObject({
      score: Score,
      steps: z.array(
        z.strictObject({
          id: z.string(),
          minutes,
          found: z.array(Found),
          best: BestCheck.exactOptional(),
          gainBits: z.number(),
          lost: minutes,
          repeated: z.boolean(),
          forbidden: z.boolean(),
          cautionSkipped: z.boolean(),
          afterProof: z.boolean(),
          inFront: RepairChance.exactOptional(),
        }),
      ),
      causes: z.array(z.string()),
      innocent: z.array(z.string()),
      orders: z.array(z.string()),
      atStart: RepairChance.exactOptional(),
      bestWay: z.array(z.strictObject({ id: z.string(), minutes, found: z.array(Found) })),
      left: BestCheck.exactOptional(),
    })
    .describe("Gone through step by step beside what the reasoning would have done."),
});
