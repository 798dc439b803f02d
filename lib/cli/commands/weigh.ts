import { CornerwiseError } from "../../errors.ts";
import type { Knowledge } from "../../knowledge/schema/compiled.ts";
import { answerWeighRequest } from "../../requests/weigh-request.ts";
import { type Command, type CommandIo, EXIT } from "../command.ts";
import { KNOWLEDGE_HELP, loadKnowledge } from "../load-knowledge.ts";
import { readArgs } from "../read-args.ts";

const HELP = `Use: cornerwise weigh [--lines] [options] < request.json

Ranks the suspects behind a complaint and names the next checks. Reads one JSON
request from standard input, or many with --lines (one request a line; one answer
a line, in order; for a bad line an object {"error": {"code", "message"}}).

Request, every field optional:
  {"car": {"drive": "front|rear|all", "front": {"layout": "strut"},
           "odometerKm": 120000, "ageYears": 9},
   "text": "owner's words",
   "findings": [{"id": "noise:small-bumps", "state": "present|absent"}],
   "limit": 10}
Findings read from the text are taken as accepted reports; those under "findings"
as checked by hand, unless they say "by": "report". Ids: cornerwise findings.
Further fields (set-up, who asks, grades, values): cornerwise schema weigh-request.

Answer:
  {"release", "read": [{"finding", "name", "state", "words"}],
   "ranking": [{"suspect", "part", "names", "fault", "place", "probability"}],
   "notInKnowledge", "next": [{"check", "name", "minutes", "setUp", "gainBits"}]}
probability is the chance that the suspect explains the complaint; "present" the
chance that the fault is there. Nothing in an answer says that a car is fit to drive.
The whole schema: cornerwise schema weigh-answer.

Options:
  --lines                  one request a line, one answer a line
${KNOWLEDGE_HELP}
  --help                   this text

Exit codes: 0 ok (with --lines also when single lines were bad), 2 the request
is wrong, 3 it could not be done.

Example:
  echo '{"text": "clunk from the front left over small bumps"}' | cornerwise weigh
`;

/** `cornerwise weigh`: requests in, rankings out. */
export const weighCommand: Command = {
  name: "weigh",
  summary: "rank the suspects behind a complaint and name the next checks",
  help: HELP,
  run: async (args, io) => {
    const { values } = readArgs(args, { lines: { type: "boolean" }, knowledge: { type: "string" } }, 0);
    const knowledge = await loadKnowledge(values.knowledge, io.cwd);
    const input = await io.stdin();
    if (values.lines === true) return answerLines(knowledge, input, io);
    if (input.trim() === "") {
      throw new CornerwiseError(
        "bad-request",
        `standard input is empty. Give a JSON request, such as {"text": "..."}.`,
      );
    }
    io.stdout(`${JSON.stringify(answerWeighRequest(knowledge, parse(input)), null, 2)}\n`);
    return EXIT.ok;
  },
};

function answerLines(knowledge: Knowledge, input: string, io: CommandIo): number {
  const lines = input.split(/\r?\n/);
  if (lines.at(-1) === "") lines.pop();
  lines.forEach((line, k) => {
    let answer: unknown;
    try {
      answer = answerWeighRequest(knowledge, parse(line));
    } catch (error) {
      if (!(error instanceof CornerwiseError)) throw error;
      answer = { error: { code: error.code, message: error.message } };
      io.stderr(`cornerwise weigh: line ${k + 1}: ${error.message}\n`);
    }
    io.stdout(`${JSON.stringify(answer)}\n`);
  });
  return EXIT.ok;
}

function parse(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch (cause) {
    const why = cause instanceof Error ? cause.message : String(cause);
    throw new CornerwiseError(
      "bad-request",
      `the request is no JSON (${why}). Mend it, or see --help.`,
      {},
      { cause },
    );
  }
}
