import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { CornerwiseError } from "../../errors.ts";
import { type Command, EXIT } from "../command.ts";
import { knowledgeFolder } from "../load-knowledge.ts";
import { readArgs } from "../read-args.ts";
import { recordSchemas, schemasByName } from "../schemas.ts";

/** `cornerwise schema`: JSON Schemas of what the library reads and writes. */
export const schemaCommand: Command = {
  name: "schema",
  summary: "print the JSON Schema of a record, a request or an answer",
  help: `Use: cornerwise schema [NAME]
       cornerwise schema --write [FOLDER]

Print the JSON Schema (draft 2020-12) of NAME, or the list of names when it is left out.

  --write   write those of the knowledge's records to FOLDER/json-schema/NAME.schema.json
            (FOLDER: knowledge/ when left out), for editors

Examples:
  cornerwise schema
  cornerwise schema fault
  cornerwise schema --write

Exit codes: 0 ok, 2 called wrongly, 3 could not be done.
`,
  async run(args, io) {
    const { values, positionals } = readArgs(args, { write: { type: "boolean" } }, 1);
    const [name] = positionals;
    if (values.write === true) {
      const folder = join(knowledgeFolder(name, io.cwd), "json-schema");
      mkdirSync(folder, { recursive: true });
      const schemas = recordSchemas();
      for (const [record, schema] of schemas) {
        writeFileSync(join(folder, `${record}.schema.json`), schemaText(schema));
      }
      io.stderr(`written: ${schemas.size} schemas to ${folder}\n`);
      return EXIT.ok;
    }
    const schemas = schemasByName();
    if (name === undefined) {
      io.stdout(`${[...schemas.keys()].join("\n")}\n`);
      return EXIT.ok;
    }
    const schema = schemas.get(name);
    if (schema === undefined) {
      const names = [...schemas.keys()].join(", ");
      throw new CornerwiseError("unknown-id", `there is no schema "${name}". Names: ${names}.`);
    }
    io.stdout(schemaText(schema));
    return EXIT.ok;
  },
};

/** A schema as it is written to a file. */
export function schemaText(schema: unknown): string {
  return `${JSON.stringify(schema, null, 2)}\n`;
}
