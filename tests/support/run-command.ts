import { type Command, type CommandIo } from "../../lib/cli/command.ts";
import { COMMANDS, runCommandLine } from "../../lib/cli/main.ts";

/** What a command wrote and how it ended. */
export interface Ran {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** Run the command line in this process, with everything that it reads and writes held in memory. */
export async function runCommand(
  args: readonly string[],
  options: { cwd?: string; stdin?: string; commands?: readonly Command[] } = {},
): Promise<Ran> {
  let out = "";
  let err = "";
  const io: CommandIo = {
    stdin: () => Promise.resolve(options.stdin ?? ""),
    stdout: (text) => {
      out += text;
    },
    stderr: (text) => {
      err += text;
    },
    cwd: options.cwd ?? process.cwd(),
  };
  const code = await runCommandLine(args, io, options.commands ?? COMMANDS);
  return { code, out, err };
}
