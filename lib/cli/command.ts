/** What a command reads from and writes to; passed in so that it can be tested. */
export interface CommandIo {
  /** The whole of standard input as text; "" when there is none. */
  readonly stdin: () => Promise<string>;
  readonly stdout: (text: string) => void;
  readonly stderr: (text: string) => void;
  /** Folder that relative paths start from. */
  readonly cwd: string;
}

/** Exit codes, the same for every command. */
export const EXIT = {
  /** Done, nothing found wrong. */
  ok: 0,
  /** Done, problems found. */
  problems: 1,
  /** The command was called wrongly; nothing was done. */
  badUse: 2,
  /** It could not be done: a file that cannot be read, a build that fails. */
  failure: 3,
} as const;

/** One command of the command line. */
export interface Command {
  readonly name: string;
  /** One line for the list of commands. */
  readonly summary: string;
  /** The text of `cornerwise NAME --help`: use, options, exit codes, examples. */
  readonly help: string;
  /**
   * Do it. `args` holds what follows the command's name.
   *
   * Returns an exit code. Expected failures may be thrown as CornerwiseError; the table prints them and chooses the code.
   */
  readonly run: (args: readonly string[], io: CommandIo) => Promise<number>;
}
