import { publishedShares, type ShareLine, sharesByAge } from "../../engine/index.ts";
import { type Command, EXIT } from "../command.ts";
import { KNOWLEDGE_HELP, loadKnowledge } from "../load-knowledge.ts";
import { readArgs } from "../read-args.ts";

/** Ages of the table by age, in years. */
const AGES = [3, 5, 7, 9, 11, 13, 15];

/** `cornerwise shares`: the priors beside published inspection shares. */
export const sharesCommand: Command = {
  name: "shares",
  summary: "set the priors beside published shares of faults at inspections",
  help: `Use: cornerwise shares [--by-age] [--assumptions] [--json] [options]

Prints, for every published share of published-shares.json, the share that the
knowledge expects of such cars before any finding, and the ratio of the two. Where
only a ratio to another group or age is compared, both columns are that ratio. In
rows of base "order" only the order within the fleet and age counts.

  --by-age                 instead: what the knowledge expects inspections to find of
                           each group at ${AGES.join(", ")} years, by fleet
  --assumptions            instead: what nobody publishes and is assumed
  --json                   print JSON
${KNOWLEDGE_HELP}
  --help                   this text

Exit codes: 0 ok, 2 called wrongly, 3 it could not be done.

Example:
  cornerwise shares
`,
  async run(args, io) {
    const { values } = readArgs(
      args,
      {
        "by-age": { type: "boolean" },
        assumptions: { type: "boolean" },
        json: { type: "boolean" },
        knowledge: { type: "string" },
      },
      0,
    );
    const knowledge = await loadKnowledge(values.knowledge, io.cwd);
    const print = <T>(data: readonly T[], lines: (items: readonly T[]) => string): void => {
      io.stdout(values.json === true ? `${JSON.stringify(data, null, 2)}\n` : lines(data));
    };
    if (values.assumptions === true) {
      print(knowledge.publishedShares?.assumptions ?? [], (all) => all.map((a) => `- ${a}\n`).join(""));
    } else if (values["by-age"] === true) {
      const fleets = knowledge.publishedShares?.fleets ?? [];
      print(
        fleets.flatMap(({ id }) =>
          sharesByAge(knowledge, id, AGES).map((group) => ({ fleet: id, ...group })),
        ),
        (all) =>
          table(
            ["fleet", "group", ...AGES.map((age) => `${age} y`)],
            all.map(({ fleet, name, shares }) => [fleet, name, ...shares.map(percent)]),
          ),
      );
    } else {
      print(publishedShares(knowledge), (all) =>
        table(["row", "base", "published", "model", "ratio"], all.map(cells)),
      );
    }
    return EXIT.ok;
  },
};

function cells(line: ShareLine): string[] {
  const figure = line.against !== undefined || line.base === "order" ? plain : percent;
  return [line.id, line.base, figure(line.published), figure(line.model), plain(line.ratio)];
}

function plain(x: number): string {
  return x.toFixed(2);
}

function percent(x: number): string {
  return `${(x * 100).toFixed(1)} %`;
}

/** Rows in columns, the first two to the left, figures to the right. */
function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const widths = head.map((name, i) => Math.max(name.length, ...rows.map((row) => row[i]?.length ?? 0)));
  const line = (row: readonly string[]): string =>
    row
      .map((cell, i) => (i < 2 ? cell.padEnd(widths[i] ?? 0) : cell.padStart(widths[i] ?? 0)))
      .join("  ")
      .trimEnd();
  return [head, ...rows].map((row) => `${line(row)}\n`).join("");
}
