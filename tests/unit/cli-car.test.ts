import { describe, expect, it, test } from "vitest";
import { EXIT } from "../../lib/cli/command.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";
import { runCommand } from "../support/run-command.ts";
import { tinyFolder } from "../support/tiny-folder.ts";

/** A good request of each command to the tiny knowledge, a bad one, and what the answer must hold. */
const COMMANDS = [
  {
    name: "orders",
    good: { tyre: "205/55R16", speedKmh: 100, measured: [{ hz: 14.3 }] },
    bad: { tyre: "round", speedKmh: 100 },
    holds: { fits: [{ shaft: "wheel", order: 1, finding: "link-play" }] },
  },
  {
    name: "play",
    good: { quantity: "play", value: 3, unit: "mm" },
    bad: { quantity: "play", value: 3 },
    holds: { limits: [{ id: "flat", standing: "at", most: { mm: 3 } }] },
  },
  {
    name: "wear",
    good: { car: { odometerKm: 90_000, front: { layout: "strut" } }, limit: 1 },
    bad: { car: { odometerKm: -1 } },
    holds: { km: 90_000, leftOut: 2 },
  },
  {
    name: "doubt",
    good: { findings: [{ id: "noise", by: "report" }], draws: 20 },
    bad: { draws: 1 },
    holds: { steadiness: { draws: 20 }, misfit: { lookAgain: null } },
  },
] as const;

describe.each(COMMANDS)("cornerwise $name", ({ name, good, bad, holds }) => {
  const run = (stdin: string, ...args: string[]) =>
    runCommand([name, "--knowledge", tinyFolder(), ...args], { stdin });

  it("answers a request as JSON on standard output", async () => {
    const { code, out, err } = await run(JSON.stringify(good));
    expect(err).toBe("");
    expect(code).toBe(EXIT.ok);
    expect(JSON.parse(out)).toMatchObject({ release: "0.1.0", ...holds });
  });

  it("answers what its schemas say", async () => {
    const schema = async (which: string) =>
      JSON.parse((await runCommand(["schema", `${name}-${which}`])).out) as {
        properties: object;
        required?: string[];
      };
    const { out } = await run(JSON.stringify(good));
    const answer = await schema("answer");
    expect(Object.keys(JSON.parse(out)).every((key) => Object.hasOwn(answer.properties, key))).toBe(true);
    for (const field of answer.required ?? []) expect(JSON.parse(out)).toHaveProperty(field);
    const request = await schema("request");
    expect(Object.keys(good).every((key) => Object.hasOwn(request.properties, key))).toBe(true);
  });

  it("answers line by line, in order, a bad line with its error in its place", async () => {
    const stdin = `${JSON.stringify(good)}\n${JSON.stringify(bad)}\nno json\n${JSON.stringify(good)}\n`;
    const { code, out, err } = await run(stdin, "--lines");
    expect(code).toBe(EXIT.ok);
    const lines = out
      .trimEnd()
      .split("\n")
      .map((line) => JSON.parse(line));
    expect(lines).toHaveLength(4);
    expect(lines[0]).toMatchObject(holds);
    expect(lines[1].error.code).toBe("bad-request");
    expect(lines[2].error.message).toContain("no JSON");
    expect(lines[3]).toEqual(lines[0]);
    expect(err).toContain(`cornerwise ${name}: line 2: `);
  });

  it("says what is wrong, and how to mend it, with exit code 2", async () => {
    for (const stdin of [JSON.stringify(bad), "{", "", "[]", "null"]) {
      const { code, out, err } = await run(stdin);
      expect(code, stdin).toBe(EXIT.badUse);
      expect(out).toBe("");
      expect(err).toMatch(/\.\nSee: cornerwise/);
    }
  });

  it("the examples of its help run on the shipped knowledge", async () => {
    const { out: help } = await runCommand([name, "--help"]);
    const examples = [...help.matchAll(/echo '([^']+)' \| cornerwise (\w+)/g)];
    expect(examples.length).toBeGreaterThan(0);
    for (const [, stdin, command] of examples) {
      expect(command).toBe(name);
      const { code, err } = await runCommand([name, "--knowledge", "knowledge"], { stdin: stdin ?? "" });
      expect([code, err]).toEqual([EXIT.ok, ""]);
    }
  });
});

test("the help of play names every quantity of the shipped limits, that of wear a context and a part that are there", async () => {
  const { limits, contexts, parts } = shippedKnowledge();
  const { out: play } = await runCommand(["play", "--help"]);
  for (const { id } of limits.quantities) expect(play).toContain(id);
  const { out: wear } = await runCommand(["wear", "--help"]);
  const [, context] = /"contexts": \["([a-z-]+)"\]/.exec(wear) ?? [];
  expect(contexts.map(({ id }) => id)).toContain(context);
  const [, part] = /"part": "([a-z-]+)"/.exec(wear) ?? [];
  expect(parts.map(({ id }) => id)).toContain(part);
});
