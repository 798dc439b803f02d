import type { z } from "zod";
import { CornerwiseError } from "../errors.ts";
import { type Entry, ENTRY_KINDS, KnownEntry, LONGEST_ENTRY, UnknownEntry } from "./entries.ts";

/** What is wrong, where and how to mend it, from zod's first issue. */
export function describeIssue(error: z.ZodError): string {
  const issue = error.issues[0];
  if (issue === undefined) return "it does not follow its form";
  const where = issue.path.map(String).join(".");
  return where === "" ? issue.message : `${where}: ${issue.message}`;
}

function kindOf(value: unknown): string {
  const kind = value !== null && typeof value === "object" && "kind" in value ? value.kind : undefined;
  return typeof kind === "string" ? kind : "";
}

/**
 * One entry from data of unknown form.
 *
 * A kind that this version does not know is kept as it is.
 *
 * Errors  bad-request: names the field, what is wrong with it, and `where` as given by the caller.
 */
export function parseEntry(value: unknown, where = "the entry"): Entry {
  const kind = kindOf(value);
  const schema = ENTRY_KINDS.has(kind) ? KnownEntry : UnknownEntry;
  const parsed = schema.safeParse(value);
  if (!parsed.success) {
    const what = kind === "" ? where : `${where} (${kind.slice(0, 40)})`;
    throw new CornerwiseError(
      "bad-request",
      `${what} cannot be read: ${describeIssue(parsed.error)}. Mend that field, or leave the entry out.`,
      {
        where,
        issues: parsed.error.issues.map(({ path, message }) => ({ path: path.map(String), message })),
      },
    );
  }
  const length = JSON.stringify(parsed.data).length;
  if (length > LONGEST_ENTRY) {
    throw new CornerwiseError(
      "bad-request",
      `${where} is too long: ${length} characters, ${LONGEST_ENTRY} at most. Shorten its text, or split it in two.`,
      { where, length },
    );
  }
  return parsed.data;
}
