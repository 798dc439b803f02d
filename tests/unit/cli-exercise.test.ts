import { readFileSync, mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { EXIT } from "../../lib/cli/command.ts";
import { Exercise, readCourse } from "../../lib/training/index.ts";
import { frozenRelease } from "../support/frozen-release.ts";
import { runCommand } from "../support/run-command.ts";

const FILE = join(import.meta.dirname, "../../knowledge/exercises/harbour-lane.json");
const { exercises } = readCourse(readFileSync(FILE, "utf8"));
const [first] = exercises;
if (first === undefined) throw new Error("the course has exercises");

function fileWith(value: unknown): string {
  const path = join(mkdtempSync(join(tmpdir(), "cornerwise-")), "exercise.json");
  writeFileSync(path, JSON.stringify(value));
  return path;
}

test("check says how hard an exercise is, its way and that it is sound", async () => {
  const { code, out, err } = await runCommand(["exercise", "check", FILE, "--id", first.id]);
  expect(code).toBe(EXIT.ok);
  expect(out).toContain(`${first.id}: ${first.name}`);
  expect(out).toContain("ends at the hidden part");
  expect(err).toBe("1 looked through, 0 cannot be solved or told apart\n");
});

test("check gives the whole previews as JSON, one a line, also of a single exercise", async () => {
  const { code, out } = await runCommand(["exercise", "check", fileWith(first), "--json"]);
  expect(code).toBe(EXIT.ok);
  expect(JSON.parse(out)).toMatchObject({ id: first.id, preview: { difficulty: { solvable: true } } });
});

test("an exercise whose results point at another corner is reported as a problem", async () => {
  const bearing = exercises.find((e) => e.id === "hum-on-the-bypass");
  const hidden = bearing?.hidden.faults[0];
  if (bearing === undefined || hidden === undefined) throw new Error("the exercise is there");
  const fault = frozenRelease(bearing.release).faults.find((f) => f.id === hidden.fault);
  const other = hidden.place === "front-right" ? "front-left" : "front-right";
  const results = (fault?.links ?? []).flatMap(({ observation }) => [
    { finding: `${observation}@${hidden.place}`, state: "absent" },
    { finding: `${observation}@${other}`, state: "present" },
  ]);
  expect(results.length).toBeGreaterThan(0);
  const { code, out } = await runCommand([
    "exercise",
    "check",
    fileWith({ ...bearing, hidden: { ...bearing.hidden, results } }),
  ]);
  expect(code).toBe(EXIT.problems);
  expect(out).toMatch(/DOES NOT END AT THE HIDDEN PART|not to be told from it: \w/);
});

test("draw prints an exercise that follows the form, the same for the same seed", async () => {
  const args = ["exercise", "draw", "--level", "easy", "--complaint", "fluid-leak", "--seed", "3"];
  const { code, out } = await runCommand([...args, "--car", '{"drive": "rear", "odometerKm": 90000}']);
  expect(code).toBe(EXIT.ok);
  const drawn = Exercise.parse(JSON.parse(out));
  expect(drawn.car).toEqual({ drive: "rear", odometerKm: 90000 });
  expect(drawn.said[0]).toEqual({ finding: "fluid-leak", state: "present" });
  const again = await runCommand([...args, "--car", '{"drive": "rear", "odometerKm": 90000}']);
  expect(again.out).toBe(out);
});

test.each([
  [["exercise"], /say check FILE, or draw/],
  [["exercise", "check"], /say check FILE, or draw/],
  [["exercise", "draw"], /--level takes easy, middling, hard/],
  [["exercise", "draw", "--level", "easy", "--seed", "-1"], /seed/],
  [["exercise", "draw", "--level", "easy", "--car", "{"], /--car is not JSON/],
  [["exercise", "draw", "--level", "easy", "--car", '{"front": {"layout": "none"}}'], /car\.front\.layout/],
  [["exercise", "draw", "--level", "easy", "--car", "[]"], /--car: .*record/],
  [["exercise", "draw", "--level", "easy", "--complaint", "no-such"], /no complaint of this knowledge/],
  [["exercise", "check", FILE, "--id", "no-such"], /has no exercise "no-such"/],
])("called wrongly it says so: %j", async (args, message) => {
  const { code, err } = await runCommand(args);
  expect(code).toBe(EXIT.badUse);
  expect(err).toMatch(message);
});
