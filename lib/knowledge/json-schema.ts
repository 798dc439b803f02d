import { z } from "zod";
import { RECORD_FOLDERS, SINGLE_FILES } from "./schema/authored.ts";

/** Name of each authored record in the singular, as its JSON Schema file is called. */
const NAMES: Readonly<Record<keyof typeof RECORD_FOLDERS, string>> = {
  parts: "part",
  faults: "fault",
  complaints: "complaint",
  features: "feature",
  observations: "observation",
  contexts: "context",
  profiles: "profile",
  checks: "check",
  cautions: "caution",
  sources: "source",
  layouts: "layout",
  "demo-cases": "demo-case",
  "worked-cases": "worked-case",
};

/**
 * JSON Schemas (draft 2020-12) of the authored records, for editors: name -> schema.
 *
 * Names are "fault", "check" ... for the records and "manifest", "scale" ... for the single files. What refines a value beyond
 * JSON Schema is left to the lint.
 */
export function jsonSchemas(): Map<string, unknown> {
  const schemas = new Map<string, unknown>();
  for (const [folder, schema] of Object.entries(RECORD_FOLDERS)) {
    schemas.set(NAMES[folder as keyof typeof RECORD_FOLDERS], toJsonSchema(schema));
  }
  for (const [file, schema] of Object.entries(SINGLE_FILES)) {
    schemas.set(file.replace(/\.json$/, ""), toJsonSchema(schema));
  }
  return schemas;
}

/** JSON Schema of what a writer of the value may leave out and put in. */
export function toJsonSchema(schema: z.ZodType): unknown {
  return z.toJSONSchema(schema, { io: "input" });
}
