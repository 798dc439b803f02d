import { capital } from "../../engine/names.ts";
import type { Knowledge } from "../../knowledge/schema/compiled.ts";
import { searchChecks, searchFindings, searchParts } from "../../words/search.ts";
import { type CatalogueItem, checkItems, findingItems, inOrderOf, partItems } from "../catalogue.ts";
import { type Command, EXIT } from "../command.ts";
import { KNOWLEDGE_HELP, loadKnowledge } from "../load-knowledge.ts";
import { readArgs } from "../read-args.ts";

/** `cornerwise findings`: everything that can be answered. */
export const findingsCommand = catalogue(
  "findings",
  "list or search what can be answered: complaints, features, observations, contexts",
  findingItems,
  searchFindings,
  `Ids are those that answers name: a complaint (noise), a feature of it
(noise:small-bumps), an observation (play-3-9, or play-3-9@front-left once the
place is known), a context (kerb-strike).

Examples:
  cornerwise findings --search "speed hump"
  cornerwise findings --json`,
);

/** `cornerwise parts`: every part with its faults. */
export const partsCommand = catalogue(
  "parts",
  "list or search parts with their places and faults",
  partItems,
  searchParts,
  `A part is found by any name: trade name, UK or US usage, slang, common misspelling.

Examples:
  cornerwise parts --search "sway bar link"
  cornerwise parts --json`,
);

/** `cornerwise checks`: every check with what it takes and settles. */
export const checksCommand = catalogue(
  "checks",
  "list or search checks with minutes, set-up and what they settle",
  checkItems,
  searchChecks,
  `Examples:
  cornerwise checks --search "rock the wheel"
  cornerwise checks --json --limit 5`,
);

function catalogue(
  name: string,
  summary: string,
  itemsOf: (knowledge: Knowledge) => readonly CatalogueItem[],
  search: (knowledge: Knowledge, words: string, limit: number) => readonly { readonly id: string }[],
  about: string,
): Command {
  return {
    name,
    summary,
    help: `Use: cornerwise ${name} [--search WORDS] [--limit N] [--json] [--knowledge FOLDER|FILE]

${capital(summary)}.

  --search WORDS           only what fits the words, best first; misspellings are forgiven
  --limit N                at most N lines
  --json                   print a JSON list of {id, name, otherNames, notes}
${KNOWLEDGE_HELP}

${about}

Exit codes: 0 something listed, 1 nothing fits, 2 called wrongly, 3 could not be done.
`,
    async run(args, io) {
      const { values } = readArgs(
        args,
        {
          search: { type: "string" },
          limit: { type: "string" },
          json: { type: "boolean" },
          knowledge: { type: "string" },
        },
        0,
      );
      const limit = values.limit === undefined ? Number.POSITIVE_INFINITY : Number(values.limit);
      if (!(limit >= 1)) {
        io.stderr(`cornerwise ${name}: --limit needs a number of 1 or more, not "${values.limit}".\n`);
        return EXIT.badUse;
      }
      const knowledge = await loadKnowledge(values.knowledge, io.cwd);
      const all = itemsOf(knowledge);
      const fitting =
        values.search === undefined ? all : inOrderOf(search(knowledge, values.search, all.length), all);
      const items = fitting.slice(0, limit);
      io.stdout(values.json === true ? `${JSON.stringify(items, null, 2)}\n` : table(items));
      if (items.length > 0) return EXIT.ok;
      io.stderr(`cornerwise ${name}: nothing fits "${values.search ?? ""}". Try fewer or other words.\n`);
      return EXIT.problems;
    },
  };
}

function table(items: readonly CatalogueItem[]): string {
  const width = Math.min(44, Math.max(0, ...items.map((item) => item.id.length)));
  return items.map((item) => `${item.id.padEnd(width)}  ${item.name}  [${item.notes.join("; ")}]\n`).join("");
}
