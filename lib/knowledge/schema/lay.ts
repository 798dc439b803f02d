import { z } from "zod";
import { Id, Line, Paragraph } from "./common.ts";

/** How something is asked of somebody who knows nothing of cars. */
export const LayWords = z.strictObject({
  question: Line,
  help: Line.optional(),
  /** What it is like in daily life. */
  example: Line.optional(),
  /** What it is called when it is one of several to choose from. */
  choice: Line.optional(),
  /** Id of a drawing of lay.json. */
  picture: Id.optional(),
  /** For a feature: it would sound silly once one of these was said, or denied, of the same complaint. */
  unless: z.strictObject({ said: z.array(Id).default([]), denied: z.array(Id).default([]) }).optional(),
});
export type LayWords = z.infer<typeof LayWords>;

/**
 * A check that anybody may make on the standing car without tools, in words of its own.
 *
 * "{place}" in the question and the steps stands for the place. What is settled this way is told, not checked: with one
 * finding at several places all of them are asked at once, else each place by itself.
 */
export const LayTry = z.strictObject({
  question: Line,
  help: Line.optional(),
  picture: Id.optional(),
  steps: z.array(Line).min(1).max(5),
  cautions: z.array(Line).max(4).default([]),
  /** The findings that can be told without a tool or a trained eye, in the order of the choices. */
  settles: z.array(Id).min(1).max(6),
});
export type LayTry = z.infer<typeof LayTry>;

/** A line drawing in a box of `width` by `height`, each shape an SVG path. */
export const LayPicture = z.strictObject({
  id: Id,
  /** What is to be seen, for those who cannot. */
  name: Line,
  width: z.number().int().min(20).max(400),
  height: z.number().int().min(20).max(400),
  shapes: z
    .array(
      z.strictObject({
        /** "outline" is drawn thin, "mark" is what is meant, "text" is written at the start of the path. */
        kind: z.enum(["outline", "mark", "text"]),
        path: z
          .string()
          .regex(/^M *-?[0-9.]+ +-?[0-9.]+[MLHVCSQTAZmlhvcsqtaz0-9 .,-]*$/, "use an SVG path")
          .max(600),
        text: z.string().min(1).max(24).optional(),
      }),
    )
    .min(1),
});
export type LayPicture = z.infer<typeof LayPicture>;

/** `lay.json`: what questions for somebody who knows nothing of cars share. */
export const Lay = z.strictObject({
  about: Paragraph,
  /** Said above every list of questions. */
  before: Line,
  /** The question that comes first, while nothing is told. */
  first: z.strictObject({ question: Line, help: Line.optional(), picture: Id.optional() }),
  /** Features that rule each other out and are asked as one question; at most `most` of them at a time, the likeliest. */
  together: z.array(
    z.strictObject({
      id: Id,
      question: Line,
      help: Line.optional(),
      picture: Id.optional(),
      features: z.array(Id).min(2),
      none: Line,
      most: z.number().int().min(2).max(12),
    }),
  ),
  /** What places are called; their own names where none is given. */
  places: z.record(Id, Line).default({}),
  /** Answers to a try that is asked for all places at once. */
  tries: z.strictObject({ several: Line, none: Line }),
  pictures: z.array(LayPicture),
  /** What lay text is held to by the lint. */
  limits: z.strictObject({
    questionLetters: z.number().int().positive(),
    /** Least average reading ease (Flesch) of all questions. */
    ease: z.number().min(0).max(100),
    /** Words that only the trade knows. */
    jargon: z.array(Line),
    /** Words of what nobody may be asked to do by themselves. */
    banned: z.array(Line),
  }),
});
export type Lay = z.infer<typeof Lay>;
