import { z } from "zod";
import { KnownEntry, UnknownEntry } from "./entries.ts";

/** Says that a JSON file is a case of ours. */
export const CASE_FORMAT = "cornerwise-case";

/** Form of the case file; raised when an older reader could no longer read it rightly. */
export const CASE_SCHEMA_VERSION = 1;

/** Limits of an imported file: far above any real case, far below what would stall a phone. */
export const CASE_LIMITS = { characters: 5_000_000, entries: 10_000, depth: 16 } as const;

/** What an exported case looks like, for those who read or write one elsewhere; the reader itself says more of what is wrong. */
export const CaseFile = z.strictObject({
  format: z.literal(CASE_FORMAT),
  schemaVersion: z.literal(CASE_SCHEMA_VERSION),
  caseId: z.string().min(1).max(64),
  entries: z
    .array(z.union([KnownEntry, UnknownEntry]))
    .min(1)
    .max(CASE_LIMITS.entries),
});
