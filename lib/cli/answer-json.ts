import { CornerwiseError } from "../errors.ts";
import type { Knowledge } from "../knowledge/schema/compiled.ts";
import type { CommandIo } from "./command.ts";
import { EXIT } from "./command.ts";
import { KNOWLEDGE_HELP, loadKnowledge } from "./load-knowledge.ts";
import { readArgs } from "./read-args.ts";

/** Options and exit codes of a command that answers JSON requests, as its help says them. */
export const REQUEST_HELP = `Options:
  --lines                  one request a line, one answer a line
${KNOWLEDGE_HELP}
  --help                   this text

Exit codes: 0 ok (with --lines also when single lines were bad), 2 the request
is wrong, 3 it could not be done.`;

/** A request in, its answer out; throws CornerwiseError for a request that is wrong. */
export type Answering = (knowledge: Knowledge, request: unknown) => unknown;

/**
 * Run a command that answers JSON requests from standard input: one, or with `--lines` one a line.
 *
 * With `--lines` every line gets an answer in its place, a bad one `{"error": {"code", "message"}}`; the exit code is then 0.
 * Errors  "bad-request" for empty input, for what is no JSON, and those of the answering itself.
 */
export async function answerJson(
  name: string,
  args: readonly string[],
  io: CommandIo,
  answering: Answering,
  example: string,
): Promise<number> {
  const { values } = readArgs(args, { lines: { type: "boolean" }, knowledge: { type: "string" } }, 0);
  const knowledge = await loadKnowledge(values.knowledge, io.cwd);
  const input = await io.stdin();
  if (values.lines === true) return answerLines(name, knowledge, input, io, answering);
  if (input.trim() === "") {
    throw new CornerwiseError(
      "bad-request",
      `standard input is empty. Give a JSON request, such as ${example}.`,
    );
  }
  io.stdout(`${JSON.stringify(answering(knowledge, parse(input)), null, 2)}\n`);
  return EXIT.ok;
}

function answerLines(
  name: string,
  knowledge: Knowledge,
  input: string,
  io: CommandIo,
  answering: Answering,
): number {
  const lines = input.split(/\r?\n/);
  if (lines.at(-1) === "") lines.pop();
  lines.forEach((line, k) => {
    let answer: unknown;
    try {
      answer = answering(knowledge, parse(line));
    } catch (error) {
      if (!(error instanceof CornerwiseError)) throw error;
      answer = { error: { code: error.code, message: error.message } };
      io.stderr(`cornerwise ${name}: line ${k + 1}: ${error.message}\n`);
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
