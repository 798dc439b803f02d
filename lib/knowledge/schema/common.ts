import { z } from "zod";

/** Record id: kebab-case, equal to the file name, never reused. */
export const Id = z
  .string()
  .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, "use lower-case words joined by hyphens")
  .max(80);

/** Text of one line. */
export const Line = z.string().min(1).max(200);

/** Text of one paragraph. */
export const Paragraph = z.string().min(1).max(600);

/** A probability strictly between 0 and 1. */
export const Probability = z.number().gt(0).lt(1);

/** Names of a thing besides its own: UK and US terms, slang, common misspellings. */
export const OtherNames = z.array(Line).max(40).default([]);

/**
 * Ways in which an owner says it, for reading free text.
 *
 * Each is a few words in order; up to two other words may stand between them; words are matched by stem.
 * `a|b` gives alternatives for one word: "speed bump|hump". `=word` takes that form only: "=braking" is not "brakes".
 * Words joined by a hyphen follow each other at once: "off-centre", "at-speed".
 */
export const Phrases = z.array(z.string().min(1).max(600)).max(80).default([]);

/** Where a number comes from: the id of a source record, or "common-practice" (a fact of the trade without a source). */
export const Basis = Id;

/**
 * How often: a word of the frequency scale (`scale.json`), a number, or either with a basis and a spread of its own.
 * The spread is a standard deviation in log-odds.
 */
export const Strength = z.union([
  Id,
  Probability,
  z.strictObject({
    s: z.union([Id, Probability]),
    basis: Basis.optional(),
    spread: z.number().positive().max(3).optional(),
  }),
]);
export type Strength = z.infer<typeof Strength>;

/** A JsonLogic rule; which operators it may use is checked by `logic.ts`. */
export const Logic: z.ZodType<unknown> = z.union([z.boolean(), z.record(z.string(), z.json())]);

/** A named set of places, as in `places.json`. */
export const PlaceSetId = Id;

/** How a record ends: it moves, is split or is retired; its file stays. */
export const Ended = z.strictObject({
  since: z.string().regex(/^\d+\.\d+\.\d+$/, "name the release, such as 1.2.0"),
  reason: Line,
  instead: z.array(Id).default([]),
});
