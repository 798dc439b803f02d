import { z } from "zod";
import { LayPicture } from "../../../lib/knowledge/schema/lay.ts";
import { Moment } from "./common.ts";
import { Caption, SentId } from "./photos.ts";

/** What the customer sees. */
export const FormView = z
  .strictObject({
    words: z.string().nullable().describe("What the workshop says before the questions."),
    car: z.string(),
    invented: z.boolean().describe("True for demonstration and training."),
    expiresAt: Moment,
    said: z
      .array(
        z.strictObject({
          id: z.string(),
          kind: z.enum(["answer", "words", "photo"]),
          asked: z.string().nullable().describe("The question that it answers."),
          text: z.string(),
        }),
      )
      .describe("What was said by this form, in order; the last of it can be taken back."),
    question: z
      .strictObject({
        id: z.string(),
        text: z.string(),
        help: z.string().nullable(),
        example: z.string().nullable(),
        picture: LayPicture.nullable().describe("A line drawing that goes with it."),
        steps: z.array(z.string()),
        cautions: z.array(z.string()),
        choices: z.array(z.string()),
      })
      .nullable()
      .describe("What is asked now; null: nothing more."),
    most: z.number().int().describe("Questions that are asked at most."),
    photosLeft: z.number().int(),
    advice: z
      .strictObject({
        stop: z.boolean().describe("True when the answers speak against driving the car."),
        name: z.string(),
        say: z.string(),
        stopIf: z.array(z.string()),
      })
      .nullable()
      .describe("What to do about driving; null: there is nothing to go by yet. Never that the car is safe."),
    done: z.boolean(),
  })
  .meta({ id: "Form" });

export const FormAnswer = z.strictObject({
  id: SentId,
  question: z.string().min(1).max(400),
  choice: z.number().int().min(0).max(99),
});

export const FormWords = z.strictObject({
  id: SentId,
  text: z.string().trim().min(1, "write something").max(4000),
});

export const FormPhotoQuery = z.strictObject({ id: SentId, caption: Caption.exactOptional() });

export const SaidParams = z.strictObject({ id: SentId });
