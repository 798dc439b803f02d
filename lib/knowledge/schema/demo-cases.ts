import { z } from "zod";
import { Id, Line, Paragraph } from "./common.ts";

/** An invented case that walks through the job. */
export const DemoCase = z.strictObject({
  id: Id,
  title: Line,
  customer: Line,
  vehicle: Line,
  plate: Line,
  car: z.record(z.string(), z.json()),
  text: Paragraph,
  about: Paragraph,
  /** Part and place that the walk-through ends at. */
  truth: z.strictObject({ fault: Id, place: Id }),
});
