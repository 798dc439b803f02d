import { z } from "zod";
import { Id, Line, Paragraph } from "./common.ts";

/** A finding of a worked case: what was told, or checked by hand, in the ids that answers are given in. */
const WorkedFinding = z.strictObject({
  /** `noise`, `noise:small-bumps`, `play-3-9@front-left` or a context. */
  id: z
    .string()
    .regex(
      /^[a-z0-9-]+([:@][a-z0-9-]+)?$/,
      "write complaint, complaint:feature, observation@place or context",
    )
    .max(160),
  state: z.enum(["present", "absent"]).default("present"),
  level: Id.optional(),
  by: z.enum(["report", "check"]).default("report"),
});

/**
 * An invented case with its answer, small enough to be gone through in the head.
 *
 * Versions of the knowledge are compared by what they make of it; it is no part of what is frozen.
 */
export const WorkedCase = z.strictObject({
  id: Id,
  title: Line,
  about: Paragraph,
  car: z.record(z.string(), z.json()),
  findings: z.array(WorkedFinding).min(1).max(20),
  truth: z.strictObject({ fault: Id, place: Id }),
});
export type WorkedCase = z.infer<typeof WorkedCase>;
