import { z } from "zod";
import { PROBLEMS } from "../problem.ts";

/** Moment in ISO 8601, UTC. */
export const Moment = z.iso.datetime();

/** Which page of a list: what the page before gave as `next`. */
export const Cursor = z.string().min(1).max(300);

/** A whole number in a query. */
export const queryNumber = (least: number, most: number) =>
  z
    .string()
    .regex(/^\d{1,9}$/, "give a whole number")
    .transform(Number)
    .pipe(z.number().int().min(least).max(most));

/** Text that a person typed on one line: no control characters, which a database or a screen may not take. */
export const lineOfText = (longest: number) =>
  z
    .string()
    .max(longest)
    // oxlint-disable-next-line no-control-regex -- these are what is refused
    .regex(/^[^\u0000-\u001f\u007f]*$/, "leave out control characters");

/** Text that may have several lines: no other control characters. */
export const textOfParagraphs = (longest: number) =>
  z
    .string()
    .trim()
    .max(longest)
    // oxlint-disable-next-line no-control-regex -- these are what is refused
    .regex(/^[^\u0000-\u0009\u000b-\u001f\u007f]*$/, "leave out control characters");

/** Problem details (RFC 9457) as every route gives them. */
export const Problem = z
  .strictObject({
    type: z.string().describe("Which kind of problem: /problems/ and its code."),
    title: z.string(),
    status: z
      .number()
      .int()
      .min(400)
      .max(599)
      .describe(`One of ${[...new Set(Object.values(PROBLEMS).map(([status]) => status))].join(", ")}.`),
    detail: z.string().describe("What is wrong, where, and how to mend it."),
    fields: z
      .array(z.strictObject({ path: z.string(), message: z.string() }))
      .describe("The fields that are wrong.")
      .exactOptional(),
  })
  .meta({ id: "Problem" });
