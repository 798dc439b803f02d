import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { expect, test } from "vitest";
import { tinyFolder } from "../support/tiny-folder.ts";
import { patch } from "../support/tiny-knowledge.ts";

const BIN = join(import.meta.dirname, "../../lib/bin/cornerwise.mjs");

function cornerwise(args: readonly string[], input = "") {
  return spawnSync(process.execPath, [BIN, ...args], { encoding: "utf8", input });
}

test("the program runs from a checkout, building itself when it must, and keeps its output to the results", () => {
  const { status, stdout } = cornerwise(["parts", "--json", "--knowledge", tinyFolder()]);
  expect(status).toBe(0);
  expect(JSON.parse(stdout).map((part: { id: string }) => part.id)).toEqual([
    "ball-joint",
    "bar-link",
    "rack",
  ]);
});

test("exit codes reach the shell: problems found 1, bad use 2, failure 3", () => {
  const broken = tinyFolder((records) => patch(records, "faults/rack-worn.json", { decisive: [] }));
  expect(cornerwise(["lint", broken]).status).toBe(1);
  expect(cornerwise(["lnit"]).status).toBe(2);
  expect(cornerwise(["lint", join(broken, "nowhere")]).status).toBe(3);
});

test("standard input is read", () => {
  const { status, stderr } = cornerwise(["weigh", "--knowledge", tinyFolder()], "not json");
  expect(status).toBe(2);
  expect(stderr).toMatch(/cornerwise weigh: /);
});
