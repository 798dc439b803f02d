import { type ParseArgsConfig, parseArgs } from "node:util";
import { CornerwiseError } from "../errors.ts";

/**
 * Options and positional arguments of a command, strictly.
 *
 * Errors  "bad-request" for an unknown option, a missing value, or more positional arguments than `most`.
 */
export function readArgs<const T extends NonNullable<ParseArgsConfig["options"]>>(
  args: readonly string[],
  options: T,
  most: number,
): { values: Values<T>; positionals: string[] } {
  try {
    const parsed = parseArgs({ args: [...args], options, allowPositionals: true, strict: true });
    if (parsed.positionals.length > most) {
      const extra = parsed.positionals.slice(most).join(" ");
      throw new CornerwiseError(
        "bad-request",
        `too many arguments: ${extra}. Put words with spaces in quotes.`,
      );
    }
    return { values: parsed.values, positionals: parsed.positionals };
  } catch (cause) {
    if (cause instanceof CornerwiseError) throw cause;
    const what = cause instanceof Error ? (cause.message.split(". ")[0] ?? "") : String(cause);
    throw new CornerwiseError("bad-request", `${what}. See --help.`, {}, { cause });
  }
}

type Values<T extends NonNullable<ParseArgsConfig["options"]>> = {
  readonly [K in keyof T]?: T[K]["type"] extends "boolean" ? boolean : string;
};
