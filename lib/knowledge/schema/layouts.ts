import { z } from "zod";
import { Id, Line } from "./common.ts";

const Point = z.tuple([z.number().min(-100).max(100), z.number().min(-130).max(130)]);

/**
 * One axle layout as drawn from above, as if through the car, in our own units: x from -100 (driver's left) to 100 (right), y from -130 (nose) to 130 (tail).
 *
 * Shapes are drawn for the left side (x < 0) when `mirror` is true and mirrored by the screen to the right.
 */
export const LayoutDrawing = z.strictObject({
  id: Id,
  name: Line,
  axle: z.enum(["front", "rear", "body"]),
  /** Value of the car attribute that this drawing stands for: front.layout = id, rear.layout = id; "body" is always drawn. */
  attribute: z.string().max(40).optional(),
  shapes: z
    .array(
      z.strictObject({
        /** Parts that this shape stands for; a suspect of one of them marks the shape. */
        parts: z.array(Id).default([]),
        mirror: z.boolean().default(false),
        kind: z.enum(["line", "outline", "circle", "ring", "coil", "spot"]),
        points: z.array(Point).min(1).max(40),
        size: z.number().positive().max(60).optional(),
        label: Line.optional(),
      }),
    )
    .min(1),
});
