import type { z } from "zod";
import { type KnowledgeProblem, throwProblems } from "./problems.ts";
import { type Authored, RECORD_FOLDERS, SINGLE_FILES } from "./schema/authored.ts";

/** What else may lie in the knowledge folder: read by others, not records. */
const BESIDE = /^(lint-exceptions\.json|(releases|json-schema|measured|exercises)\/.+|[^/]+\.md)$/;

/**
 * Read the authored knowledge from its files: parse, check the form of each record, check that id and file name agree.
 *
 * Shape   files: path relative to knowledge/ ("faults/damper-leaking.json") -> text. Records come back in the order of their ids.
 * Errors  one "bad-record" that lists every problem of every file (details.problems: KnowledgeProblem[]).
 */
export function readKnowledge(files: ReadonlyMap<string, string>): Authored {
  const problems: KnowledgeProblem[] = [];
  const authored: Record<string, unknown> = {};
  for (const [name, schema] of Object.entries(SINGLE_FILES)) {
    const text = files.get(name);
    if (text === undefined) problems.push(missing(name));
    else authored[fieldOf(name)] = parseFile(name, text, schema as z.ZodType, problems);
  }
  const folders = new Map<string, { id: string }[]>(
    Object.keys(RECORD_FOLDERS).map((folder) => [folder, []]),
  );
  for (const [path, text] of [...files].sort(([a], [b]) => (a < b ? -1 : 1))) {
    if (Object.hasOwn(SINGLE_FILES, path) || BESIDE.test(path)) continue;
    const [folder = "", name = "", ...deeper] = path.split("/");
    const records = folders.get(folder);
    if (records === undefined || deeper.length > 0 || !name.endsWith(".json")) {
      problems.push(misplaced(path));
      continue;
    }
    const schema = RECORD_FOLDERS[folder as keyof typeof RECORD_FOLDERS];
    const record = parseFile(path, text, schema as z.ZodType<{ id: string }>, problems);
    if (record === undefined) continue;
    if (`${record.id}.json` !== name) {
      problems.push({
        file: path,
        path: "id",
        what: `the id "${record.id}" is not the file name`,
        mend: `Name the file ${record.id}.json or give the id "${name.slice(0, -5)}".`,
      });
    }
    records.push(record);
  }
  throwProblems("bad-record", problems);
  for (const [folder, records] of folders) {
    authored[fieldOf(folder)] = records.sort((a, b) => (a.id < b.id ? -1 : 1));
  }
  return authored as unknown as Authored;
}

/** Field of the authored knowledge that a file or folder fills: "set-ups.json" -> setUps. */
function fieldOf(name: string): string {
  return name.replace(/\.json$/, "").replace(/-([a-z])/g, (_, letter: string) => letter.toUpperCase());
}

function parseFile<T>(
  file: string,
  text: string,
  schema: z.ZodType<T>,
  problems: KnowledgeProblem[],
): T | undefined {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch (error) {
    const what = error instanceof Error ? error.message : String(error);
    problems.push({ file, path: "", what: `not JSON (${what})`, mend: "Mend the JSON at that spot." });
    return undefined;
  }
  const result = schema.safeParse(json);
  if (result.success) return result.data;
  for (const issue of result.error.issues) {
    problems.push({ file, path: issue.path.join("."), what: issue.message, mend: howToMend(issue) });
  }
  return undefined;
}

function howToMend(issue: z.core.$ZodIssue): string {
  switch (issue.code) {
    case "unrecognized_keys":
      return `Remove or rename ${issue.keys.map((key) => `"${key}"`).join(", ")}.`;
    case "invalid_type":
      return `Give ${issue.expected === "undefined" ? "nothing" : `a value of type ${issue.expected}`} here.`;
    case "invalid_value":
      return `Use one of: ${issue.values.map(String).join(", ")}.`;
    case "too_small":
      return `Give ${issue.inclusive === false ? "more than" : "at least"} ${issue.minimum}.`;
    case "too_big":
      return `Give ${issue.inclusive === false ? "less than" : "at most"} ${issue.maximum}.`;
    case "invalid_union":
      return "Use one of the forms that the schema in knowledge/json-schema names for this field.";
    default:
      return "Follow the schema in knowledge/json-schema.";
  }
}

function missing(file: string): KnowledgeProblem {
  return { file, path: "", what: "the file is missing", mend: "Add it to the knowledge folder." };
}

function misplaced(file: string): KnowledgeProblem {
  return {
    file,
    path: "",
    what: "this is not where a record lies",
    mend: `Put it as <id>.json into one of: ${Object.keys(RECORD_FOLDERS).join(", ")}; or remove it.`,
  };
}
