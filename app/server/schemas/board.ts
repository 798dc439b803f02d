import { z } from "zod";
import { Statement } from "../../../lib/training/index.ts";
import { Cursor } from "./common.ts";
import { AttemptFilter } from "./exercises.ts";

const count = z.number().int().min(0);
const minutes = z.number().min(0).describe("Minutes on the ramp.");
const share = z.number().min(0).max(1);

const Tally = z
  .strictObject({
    attempts: count,
    ended: count.describe("All further counts and sums are over these."),
    right: count,
    rightPart: count,
    complete: count,
    minutes,
    bestMinutes: minutes,
    lostMinutes: minutes,
    wrongParts: count,
    unsafe: count,
    cautionsSkipped: count,
    jumped: count,
    confidence: share.describe("Mean of what was stated.").exactOptional(),
    brier: share.describe("Mean.").exactOptional(),
  })
  .meta({ id: "AttemptTally" });

const Cost = z.strictObject({ check: z.string(), attempts: count, minutes });

export const Board = z.strictObject({
  board: z
    .strictObject({
      total: Tally,
      exercises: z.array(z.strictObject({ id: z.string(), name: z.string(), ...Tally.shape })),
      trainees: z.array(z.strictObject({ id: z.string().nullable(), name: z.string(), ...Tally.shape })),
      overlooked: z
        .array(Cost)
        .describe("Checks that the best choice would have made and that were not made; the dearest first."),
      costly: z.array(Cost).describe("Checks that were made and lost minutes; the dearest first."),
      lostIn: z.strictObject({
        repeated: minutes,
        afterProof: minutes,
        setUp: minutes,
        question: minutes,
        check: minutes,
      }),
      withoutSteps: count.describe("Ended before steps were kept: in the tallies alone."),
    })
    .describe("The attempts of the filter, added up."),
  more: z.boolean().describe("There are more than are added up here: narrow the filter."),
  choices: z
    .strictObject({
      exercises: z.array(z.strictObject({ id: z.string(), name: z.string() })),
      trainees: z.array(z.strictObject({ id: z.string().nullable(), name: z.string() })),
      courses: z.array(z.string()),
    })
    .describe("What there is to filter by."),
  recordStore: z.string().nullable().describe("Where statements can be sent to; null: nowhere."),
});

export const Statements = z.array(Statement);

export const SendStatements = z.strictObject({ ...AttemptFilter.shape, after: Cursor.exactOptional() });

export const SentStatements = z.strictObject({
  attempts: count.describe("Attempts of this page."),
  taken: count.describe("Statements that the record store holds now."),
  differing: count.describe("Statements under whose ids it holds something else; they were left so."),
  refused: z.array(z.strictObject({ id: z.string(), why: z.string() })),
  trouble: z.string().nullable().describe("Why the page was not sent whole, in words; send it again."),
  next: z.string().nullable().describe("Give it as `after` for the next page; null: this is the last."),
});
