import type { z } from "zod";
import { CornerwiseError } from "../errors.ts";

/**
 * A request by its schema.
 *
 * Errors: `bad-request` that names every field that is wrong and the command that prints the schema called `name`.
 */
export function parseRequest<T>(schema: z.ZodType<T>, name: string, input: unknown): T {
  const parsed = schema.safeParse(input);
  if (parsed.success) return parsed.data;
  const issues = parsed.error.issues.map((i) => `${i.path.join(".") || "the request"}: ${i.message}`);
  throw new CornerwiseError(
    "bad-request",
    `The request does not follow its schema: ${issues.join("; ")}. Print the schema with "cornerwise schema ${name}".`,
    { issues },
  );
}
