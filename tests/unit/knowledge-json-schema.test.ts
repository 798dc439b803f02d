import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { schemaText } from "../../lib/cli/commands/schema.ts";
import { jsonSchemas } from "../../lib/knowledge/json-schema.ts";
import { RECORD_FOLDERS, SINGLE_FILES } from "../../lib/knowledge/schema/authored.ts";

const FOLDER = join(import.meta.dirname, "../../knowledge/json-schema");

test("there is a JSON Schema for each kind of record and each single file", () => {
  const count = Object.keys(RECORD_FOLDERS).length + Object.keys(SINGLE_FILES).length;
  expect(jsonSchemas().size).toBe(count);
  for (const [name, schema] of jsonSchemas()) {
    expect(schema, name).toMatchObject({
      $schema: "https://json-schema.org/draft/2020-12/schema",
      type: "object",
      additionalProperties: false,
    });
  }
});

test("what a writer may leave out is not required", () => {
  const part = jsonSchemas().get("part") as { required: string[]; properties: Record<string, unknown> };
  expect(Object.keys(part.properties)).toContain("otherNames");
  expect(part.required).not.toContain("otherNames");
  expect(part.required).toEqual(expect.arrayContaining(["id", "name", "about", "group", "at"]));
});

test("the schemas in the knowledge folder are those of the library: cornerwise schema --write mends it", () => {
  const written = readdirSync(FOLDER).sort();
  expect(written).toEqual([...jsonSchemas().keys()].map((name) => `${name}.schema.json`).sort());
  for (const [name, schema] of jsonSchemas()) {
    expect(readFileSync(join(FOLDER, `${name}.schema.json`), "utf8"), name).toBe(schemaText(schema));
  }
});
