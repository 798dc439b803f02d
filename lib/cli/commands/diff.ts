import { typicalPriors } from "../../engine/index.ts";
import { diffKnowledge, isEmptyDiff, type KnowledgeDiff } from "../../knowledge/diff.ts";
import { type Command, EXIT } from "../command.ts";
import { loadVersion } from "../load-knowledge.ts";
import { readArgs } from "../read-args.ts";

/** `cornerwise diff A B`: what changed from one version of the knowledge to another. */
export const diffCommand: Command = {
  name: "diff",
  summary: "show what changed between two versions of the knowledge",
  help: `Use: cornerwise diff A B [--json]

Show what changed from A to B: ids added, changed and retired by kind, and every
probability that moved, as a change in natural log-odds (0.7 doubles the odds).
"prior" is a fault's chance on a car of which nothing is known.
A and B are each a folder of records, a release's folder, a compiled.json, or the
version of a frozen release such as 0.1.0.

  --json   print the whole difference as JSON

Examples:
  cornerwise diff 0.1.0 knowledge
  cornerwise diff knowledge/releases/0.1.0 knowledge/releases/0.2.0 --json

Exit codes: 0 no difference, 1 they differ, 2 called wrongly, 3 could not be done.
`,
  async run(args, io) {
    const { values, positionals } = readArgs(args, { json: { type: "boolean" } }, 2);
    const [a, b] = positionals;
    if (a === undefined || b === undefined) {
      io.stderr("cornerwise diff: name two versions. See: cornerwise diff --help\n");
      return EXIT.badUse;
    }
    const diff = diffKnowledge(await loadVersion(a, io.cwd), await loadVersion(b, io.cwd), typicalPriors);
    io.stdout(values.json === true ? `${JSON.stringify(diff, null, 2)}\n` : diffText(diff));
    return isEmptyDiff(diff) ? EXIT.ok : EXIT.problems;
  },
};

function diffText(diff: KnowledgeDiff): string {
  const lines = [`from ${diff.from} to ${diff.to}`];
  if (isEmptyDiff(diff)) return `${lines[0]}: no difference\n`;
  for (const [kind, { added, changed, retired }] of Object.entries(diff.records)) {
    for (const [word, ids] of Object.entries({ added, changed, retired })) {
      if (ids.length > 0) lines.push(`${kind} ${word}: ${ids.join(", ")}`);
    }
  }
  if (diff.files.length > 0) lines.push(`changed: ${diff.files.join(", ")}`);
  for (const { weight, from, to, logOddsDelta } of diff.weights) {
    const sign = logOddsDelta > 0 ? "+" : "";
    lines.push(`${weight}: ${from} -> ${to} (log-odds ${sign}${logOddsDelta.toFixed(3)})`);
  }
  return `${lines.join("\n")}\n`;
}
