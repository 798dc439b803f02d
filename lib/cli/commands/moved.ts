import { type ComparedCase, compareCases, MOVED_BY } from "../../case/index.ts";
import { type Command, EXIT } from "../command.ts";
import { knowledgeFolder, loadFolder, loadVersion } from "../load-knowledge.ts";
import { readArgs } from "../read-args.ts";

/** `cornerwise moved A B`: which worked cases two versions of the knowledge see differently. */
export const movedCommand: Command = {
  name: "moved",
  summary: "show which worked cases two versions of the knowledge see differently",
  help: `Use: cornerwise moved A B [--cases FOLDER] [--all] [--json]

Weigh the invented worked cases with A and with B. A case has moved when another
suspect leads, or when the chance of the leader or of the true part changed by more
than ${MOVED_BY}. A and B are named as for cornerwise diff. What a version does not know
of a case is left out of it, and named.

  --cases FOLDER  knowledge folder that the cases are taken from (worked-cases/ in
                  it) instead of knowledge/
  --all           the cases that did not move too
  --json          print every case as JSON

Example:
  cornerwise moved 0.1.0 knowledge

Exit codes: 0 nothing moved, 1 some did, 2 called wrongly, 3 could not be done.
`,
  async run(args, io) {
    const { values, positionals } = readArgs(
      args,
      { json: { type: "boolean" }, all: { type: "boolean" }, cases: { type: "string" } },
      2,
    );
    const [a, b] = positionals;
    if (a === undefined || b === undefined) {
      io.stderr("cornerwise moved: name two versions. See: cornerwise moved --help\n");
      return EXIT.badUse;
    }
    const cases = loadFolder(knowledgeFolder(values.cases, io.cwd)).authored.workedCases;
    const [before, after] = [await loadVersion(a, io.cwd), await loadVersion(b, io.cwd)];
    const compared = compareCases(before, after, cases);
    const moved = compared.filter((each) => each.moved.length > 0);
    const shown = values.all === true ? compared : moved;
    io.stdout(values.json === true ? `${JSON.stringify(compared, null, 2)}\n` : shown.map(caseText).join(""));
    io.stderr(
      `${moved.length} of ${compared.length} worked cases moved from ${before.version} to ${after.version}\n`,
    );
    return moved.length === 0 ? EXIT.ok : EXIT.problems;
  },
};

function caseText({ id, title, moved, before, after }: ComparedCase): string {
  const standing = `the leader is ${after.leader.name}, ${after.leader.probability.toFixed(2)}`;
  const leftOut = [
    ...before.leftOut.map((what) => `not known before: ${what}`),
    ...after.leftOut.map((what) => `not known now: ${what}`),
  ];
  const lines = [...(moved.length > 0 ? moved : [`not moved; ${standing}`]), ...leftOut];
  return `${id}: ${title}\n${lines.map((line) => `  ${line}\n`).join("")}`;
}
