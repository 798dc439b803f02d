import { z } from "zod";
import { Basis, Id, Line, Paragraph } from "./common.ts";

/** `advice.json`: what is said to a customer whose car nobody has seen yet, and when parts are worth having ready. */
export const Advice = z.strictObject({
  /** Says that the bars are invented. */
  about: Paragraph,
  /** Gravest first; the last holds from 0 on. */
  levels: z
    .array(
      z.strictObject({
        id: Id,
        name: Line,
        /** Danger (the sum over dangerous faults of chance over the fault's own bar) from which it is said. */
        from: z.number().min(0),
        say: Paragraph,
      }),
    )
    .min(1)
    .refine((levels) => levels.at(-1)?.from === 0, "the last level holds from 0 on")
    .refine(
      (levels) => levels.every((level, i) => i === 0 || level.from < (levels[i - 1]?.from ?? 0)),
      "put the gravest level first, each with a lower bar than the one before",
    ),
  /** Signs at which to stop at once, whatever was said. */
  stopIf: z.array(Line).min(1),
  ready: z.strictObject({
    /** Share of a part's price that is lost when it goes back. */
    returnShare: z.number().min(0).max(1),
    returnMinutes: z.number().min(0).max(10_000),
    /** Lost when the part is needed and not there. */
    waitMinutes: z.number().min(0).max(10_000),
    why: Paragraph,
    basis: Basis,
  }),
});
export type Advice = z.infer<typeof Advice>;
