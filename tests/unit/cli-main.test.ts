import { expect, test } from "vitest";
import { type Command, EXIT } from "../../lib/cli/command.ts";
import { COMMANDS } from "../../lib/cli/main.ts";
import { CornerwiseError, type ErrorCode } from "../../lib/errors.ts";
import { runCommand } from "../support/run-command.ts";

function throwing(error: Error): Command {
  return { name: "try", summary: "throw", help: "help of try\n", run: () => Promise.reject(error) };
}

test("--help names every command with its summary", async () => {
  const { code, out, err } = await runCommand(["--help"]);
  expect(code).toBe(EXIT.ok);
  expect(err).toBe("");
  expect(COMMANDS.length).toBeGreaterThan(6);
  for (const { name, summary } of COMMANDS) expect(out).toMatch(new RegExp(`^ {2}${name} +${summary}$`, "m"));
});

test("without a command the help is shown and the exit code says bad use", async () => {
  const { code, out } = await runCommand([]);
  expect(code).toBe(EXIT.badUse);
  expect(out).toContain("Commands:");
});

test("every command's help says how it is used, an example, and its exit codes", async () => {
  for (const { name } of COMMANDS) {
    const asked = await runCommand([name, "--help"]);
    expect(asked.code, name).toBe(EXIT.ok);
    expect(asked.out, name).toMatch(new RegExp(`^Use: cornerwise ${name}`));
    expect(asked.out, name).toMatch(/^Examples?:\n(.*\n)*? {2}.*cornerwise /m);
    expect(asked.out, name).toContain("Exit codes:");
    expect((await runCommand(["help", name])).out, name).toBe(asked.out);
    expect((await runCommand([name, "-h"])).out, name).toBe(asked.out);
  }
});

test("names of commands are unique", () => {
  const names = COMMANDS.map((command) => command.name);
  expect(new Set(names).size).toBe(names.length);
});

test("an unknown command is bad use and the commands that there are get named", async () => {
  const { code, out, err } = await runCommand(["lnit"]);
  expect(code).toBe(EXIT.badUse);
  expect(out).toBe("");
  expect(err).toMatch(/no command "lnit".*\blint\b/);
});

test("a coded error goes to standard error and chooses the exit code", async () => {
  const codes: [ErrorCode, number][] = [
    ["bad-request", EXIT.badUse],
    ["unknown-id", EXIT.badUse],
    ["not-found", EXIT.failure],
    ["not-readable", EXIT.failure],
    ["bad-record", EXIT.failure],
  ];
  for (const [errorCode, exit] of codes) {
    const error = new CornerwiseError(errorCode, "what, where. How to mend it.");
    const { code, out, err } = await runCommand(["try"], { commands: [throwing(error)] });
    expect(code, errorCode).toBe(exit);
    expect(out).toBe("");
    expect(err).toContain("cornerwise try: what, where. How to mend it.");
    expect(err.includes("--help")).toBe(exit === EXIT.badUse);
  }
});

test("an error that nobody expected is a failure and is not hidden", async () => {
  const { code, err } = await runCommand(["try"], { commands: [throwing(new RangeError("off by one"))] });
  expect(code).toBe(EXIT.failure);
  expect(err).toContain("RangeError: off by one");
});

test("an unknown option, a missing value and too many arguments are bad use of every command", async () => {
  for (const { name } of COMMANDS) {
    expect((await runCommand([name, "--no-such-option"])).code, name).toBe(EXIT.badUse);
    expect((await runCommand([name, "a", "b", "c", "d"])).code, name).toBe(EXIT.badUse);
  }
  for (const name of ["findings", "parts", "checks"]) {
    expect((await runCommand([name, "--search"])).code, name).toBe(EXIT.badUse);
    expect((await runCommand([name, "--limit", "none"])).code, name).toBe(EXIT.badUse);
  }
});
