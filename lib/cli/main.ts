import { CornerwiseError, type ErrorCode } from "../errors.ts";
import { type Command, type CommandIo, EXIT } from "./command.ts";
import { backupCommand } from "./commands/backup.ts";
import { checksCommand, findingsCommand, partsCommand } from "./commands/catalogue.ts";
import { diffCommand } from "./commands/diff.ts";
import { doubtCommand } from "./commands/doubt.ts";
import { exerciseCommand } from "./commands/exercise.ts";
import { freezeCommand } from "./commands/freeze.ts";
import { lintCommand } from "./commands/lint.ts";
import { movedCommand } from "./commands/moved.ts";
import { ordersCommand } from "./commands/orders.ts";
import { playCommand } from "./commands/play.ts";
import { readCommand } from "./commands/read.ts";
import { restoreCommand } from "./commands/restore.ts";
import { schemaCommand } from "./commands/schema.ts";
import { sharesCommand } from "./commands/shares.ts";
import { wearCommand } from "./commands/wear.ts";
import { weighCommand } from "./commands/weigh.ts";

/** Every command, in the order of the help. */
export const COMMANDS: readonly Command[] = [
  weighCommand,
  doubtCommand,
  readCommand,
  ordersCommand,
  playCommand,
  wearCommand,
  exerciseCommand,
  findingsCommand,
  partsCommand,
  checksCommand,
  schemaCommand,
  lintCommand,
  diffCommand,
  movedCommand,
  sharesCommand,
  freezeCommand,
  backupCommand,
  restoreCommand,
];

/** Errors that mean "called wrongly"; every other coded error means "could not be done". */
const BAD_USE: ReadonlySet<ErrorCode> = new Set(["bad-request", "unknown-id"]);

/**
 * Run the command line.
 *
 * Returns the exit code: 0 ok, 1 problems found, 2 bad use, 3 failure. Nothing is thrown for a coded error: it is said on stderr.
 */
export async function runCommandLine(
  args: readonly string[],
  io: CommandIo,
  commands: readonly Command[] = COMMANDS,
): Promise<number> {
  const [name, ...rest] = args;
  if (name === undefined || name === "--help" || name === "-h" || name === "help") {
    const asked = commands.find((command) => name === "help" && command.name === rest[0]);
    io.stdout(asked === undefined ? overview(commands) : asked.help);
    return name === undefined ? EXIT.badUse : EXIT.ok;
  }
  const command = commands.find((candidate) => candidate.name === name);
  if (command === undefined) {
    io.stderr(
      `cornerwise: there is no command "${name}". Commands: ${commands.map((c) => c.name).join(", ")}.\n`,
    );
    return EXIT.badUse;
  }
  if (rest.some((arg) => arg === "--help" || arg === "-h")) {
    io.stdout(command.help);
    return EXIT.ok;
  }
  try {
    return await command.run(rest, io);
  } catch (error) {
    if (!(error instanceof CornerwiseError)) {
      io.stderr(
        `cornerwise ${name}: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}\n`,
      );
      return EXIT.failure;
    }
    io.stderr(`cornerwise ${name}: ${error.message}\n`);
    if (!BAD_USE.has(error.code)) return EXIT.failure;
    io.stderr(`See: cornerwise ${name} --help\n`);
    return EXIT.badUse;
  }
}

function overview(commands: readonly Command[]): string {
  const width = Math.max(...commands.map((command) => command.name.length));
  const lines = commands.map((command) => `  ${command.name.padEnd(width)}  ${command.summary}`);
  return `Use: cornerwise COMMAND [options]

Find the one worn, loose, leaking or bent part behind a car's complaint.

Commands:
${lines.join("\n")}

cornerwise COMMAND --help says how a command is used, with examples.
Exit codes: 0 ok, 1 problems found, 2 called wrongly, 3 could not be done.
Results go to standard output, everything else to standard error.
`;
}
