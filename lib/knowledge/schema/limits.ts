import { z } from "zod";
import { Basis, Id, Line, Logic, Paragraph } from "./common.ts";

const Size = z.number().positive();

/** How a rule gives its figure. Sizes are in the rule's own unit. */
export const LimitFigure = z.discriminatedUnion("kind", [
  z.strictObject({ kind: z.literal("flat"), most: Size }),
  /** What must be left: a depth or a thickness. */
  z.strictObject({ kind: z.literal("least"), least: Size }),
  /** By diameter, in steps: the first whose `upTo` is not passed, else `above`. */
  z.strictObject({
    kind: z.literal("steps"),
    steps: z
      .array(z.strictObject({ upTo: Size, most: Size }))
      .min(1)
      .max(20),
    above: Size,
  }),
  /** By diameter, along straight lines between the points; level before the first and after the last. */
  z.strictObject({
    kind: z.literal("line"),
    points: z
      .array(z.strictObject({ at: Size, most: Size }))
      .min(2)
      .max(20),
  }),
  /** In proportion to the diameter: `most` on a diameter of `on`. */
  z.strictObject({ kind: z.literal("scaled"), most: Size, on: Size }),
]);
export type LimitFigure = z.infer<typeof LimitFigure>;

/** `limits.json`: published limits of free play, run-out and wear, each with the rule that it stands in. */
export const Limits = z.strictObject({
  about: Paragraph,
  /** What is said beside every comparison. */
  decides: Paragraph,
  quantities: z
    .array(
      z.strictObject({
        id: Id,
        name: Line,
        how: Paragraph,
        /** The circle on which the movement is measured, such as "the steering wheel"; a depth has none. */
        circle: Line.optional(),
        /** "swing": a point moves along the circle; "tilt": a disc that does not stand square, read over a whole turn. */
        angle: z.enum(["swing", "tilt"]).optional(),
        /** Observation that the measured mm answer. */
        observation: Id.optional(),
      }),
    )
    .min(1),
  limits: z
    .array(
      z.strictObject({
        id: Id,
        quantity: Id,
        rule: Line,
        country: z.string().regex(/^[A-Z]{2}(-[A-Z]{2,3})?$/, "use a code such as US, US-MO, GB or EU"),
        applies: Line,
        /** JsonLogic over the car; left out or not known: `applies` is for the reader. */
        when: Logic.optional(),
        unit: z.enum(["mm", "in"]),
        /** Diameter that the figure goes by: of the circle measured on, or of the rim (where the bead sits). */
        by: z.enum(["circle", "rim"]).default("circle"),
        figure: LimitFigure,
        note: Line.optional(),
        basis: Basis,
      }),
    )
    .min(1),
});
export type Limits = z.infer<typeof Limits>;
