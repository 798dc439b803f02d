import { z } from "zod";
import { CornerwiseError } from "../errors.ts";
import { CASE_FORMAT, CASE_LIMITS, CASE_SCHEMA_VERSION } from "./case-file.ts";
import type { Entry } from "./entries.ts";
import { orderEntries } from "./order-entries.ts";
import { describeIssue, parseEntry } from "./parse-entry.ts";
import { readJson } from "./read-json.ts";

const Envelope = z.strictObject({
  format: z.literal(CASE_FORMAT, { error: `this is no case file: "format" must be "${CASE_FORMAT}"` }),
  schemaVersion: z.literal(CASE_SCHEMA_VERSION),
  caseId: z.string().min(1).max(64),
  entries: z.array(z.unknown()).min(1),
});

function refuse(what: string, mend: string, details: Record<string, unknown> = {}): never {
  throw new CornerwiseError("bad-request", `The case file cannot be taken in: ${what}. ${mend}`, details);
}

/** What to do about a file that is too long, too deep or no JSON. */
function jsonOf(text: string): unknown {
  try {
    return readJson(text, CASE_LIMITS);
  } catch (error) {
    if (!(error instanceof CornerwiseError)) throw error;
    const { code, message } = error;
    if (code === "bad-request") return refuse(message.replace(/\.$/, ""), "Check that it is the right file.");
    throw new CornerwiseError(
      code,
      `The case file cannot be taken in: ${message} Check that it was saved whole, or export it again.`,
      {},
      { cause: error },
    );
  }
}

function checkVersion(json: unknown): void {
  if (json === null || typeof json !== "object" || !("schemaVersion" in json)) return;
  const version = json.schemaVersion;
  if (typeof version === "number" && version > CASE_SCHEMA_VERSION) {
    refuse(
      `it has form ${version}, this version reads form ${CASE_SCHEMA_VERSION}`,
      "Update this copy, or export the case from one that is as old.",
      { found: version, reads: CASE_SCHEMA_VERSION },
    );
  }
}

/**
 * A case from its JSON text, every entry checked.
 *
 * Shape   gives the case's id and its entries once each, in order; exportCase of them gives an equal case.
 * Range   CASE_LIMITS: characters of text, number of entries, depth of nesting; LONGEST_ENTRY for each.
 * Errors  not-readable: no JSON. bad-request: says what, where and how to mend it.
 */
export function importCase(text: string): { readonly caseId: string; readonly entries: Entry[] } {
  const json = jsonOf(text);
  checkVersion(json);
  const envelope = Envelope.safeParse(json);
  if (!envelope.success) refuse(describeIssue(envelope.error), "Export the case again.");
  const { caseId, entries: raw } = envelope.data;
  if (raw.length > CASE_LIMITS.entries) {
    refuse(
      `it has ${raw.length} entries, ${CASE_LIMITS.entries} at most`,
      "Check that it is the right file.",
    );
  }
  const entries = raw.map((value, index) => parseEntry(value, `Entry ${index + 1} of the case file`));
  const stray = entries.findIndex((entry) => entry.caseId !== caseId);
  if (stray >= 0) {
    refuse(
      `entry ${stray + 1} belongs to case ${entries[stray]?.caseId}, the file to case ${caseId}`,
      "Take that entry out, or export the case again.",
      { index: stray },
    );
  }
  return { caseId, entries: orderEntries(entries) };
}
