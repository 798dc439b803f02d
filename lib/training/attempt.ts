import { z } from "zod";

/** Kind of the entry that a check or question was made; its answers follow. */
export const CHECK_MADE = "check-made";
/** Kind of the entry that a part was ordered before the verdict. */
export const PART_ORDERED = "part-ordered";

/** One step of a trainee, in the order in which they were made; the clock plays no part. */
export const Step = z.discriminatedUnion("kind", [
  /** A check at a place (`check@place`) or a question (`ask:finding`). */
  z.strictObject({ kind: z.literal("check"), id: z.string().min(1).max(300) }),
  z.strictObject({ kind: z.literal("cautions-read"), check: z.string().min(1).max(200) }),
  /** A part ordered before the verdict, as `part@place`. */
  z.strictObject({ kind: z.literal("ordered"), repair: z.string().min(3).max(300) }),
]);
export type Step = z.infer<typeof Step>;

/** How an attempt ended. */
export const Conclusion = z.strictObject({
  /** Suspects named as the cause, as `fault@place`. */
  suspects: z.array(z.string().min(3).max(300)).max(20),
  /** How sure the trainee was before knowing, 0..1. */
  confidence: z.number().min(0).max(1),
});
export type Conclusion = z.infer<typeof Conclusion>;

/** One trainee's go at an exercise. */
export interface Attempt {
  readonly steps: readonly Step[];
  readonly conclusion: Conclusion | undefined;
}
