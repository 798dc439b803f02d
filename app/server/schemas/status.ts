import { z } from "zod";

export const Health = z.strictObject({
  status: z.literal("ok"),
  database: z.literal("ok"),
  version: z.string(),
});

/** The document that describes every route. */
export const ApiDocument = z.looseObject({ openapi: z.string() });
