import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { packSlices, resumed, type SliceFiles, sliceFiles } from "../bench/slices.ts";

let root = "";
let files: SliceFiles;
const jobs = [1, 2, 3, 4].map((seed) => ({ seed }));
let asked: number[] = [];
let said: string[] = [];

/** Plays as many jobs as there is time for, then stops in the middle as a killed run does. */
async function run(factor: number, stopAfter = Number.POSITIVE_INFINITY): Promise<number[]> {
  asked = [];
  said = [];
  return resumed<number>(
    files,
    jobs,
    async (some, { played }) => {
      const results: number[] = [];
      for (const [at, job] of some.entries()) {
        if (asked.length >= stopAfter) throw new Error("stopped");
        const { seed } = job as { seed: number };
        asked.push(seed);
        results.push(factor * seed);
        played(at, factor * seed);
      }
      return results;
    },
    (line) => said.push(line),
  );
}

beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), "slices-"));
  files = sliceFiles(root, "cases", { version: "1" });
});
afterEach(() => rmSync(root, { recursive: true }));

describe("a long run in slices", () => {
  test("goes on where it stopped; the first slice is played again as a probe", async () => {
    await expect(run(10, 2)).rejects.toThrow("stopped");
    expect(await run(10)).toEqual([10, 20, 30, 40]);
    expect(asked).toEqual([1, 3, 4]);
    expect(said).toEqual(["2 of 4 slices were played before."]);
  });

  test("a slice that was cut off while it was written is played again, and does not swallow the next", async () => {
    await expect(run(10, 2)).rejects.toThrow("stopped");
    const text = readFileSync(files.growing, "utf8");
    writeFileSync(files.growing, text.slice(0, -6));
    expect(await run(10)).toEqual([10, 20, 30, 40]);
    expect(asked).toEqual([1, 2, 3, 4]);
    expect(await run(10)).toEqual([10, 20, 30, 40]);
    expect(asked).toEqual([1]);
  });

  test("another program: what was kept is laid aside, not mixed in and not lost", async () => {
    await run(10);
    expect(await run(11)).toEqual([11, 22, 33, 44]);
    expect(said.join(" ")).toContain("laid aside");
    expect(readFileSync(`${files.growing}.other-program`, "utf8")).toContain('"result":40');
  });

  test("packed slices count as played; those of an older knowledge go, those of other runs stay", async () => {
    const older = sliceFiles(root, "cases", { version: "0" });
    const other = sliceFiles(root, "others", { version: "0" });
    await run(10);
    for (const place of [older, other]) {
      packSlices(place);
      expect(existsSync(place.packed)).toBe(true);
    }
    packSlices(files);
    expect(existsSync(older.packed)).toBe(false);
    expect(existsSync(other.packed)).toBe(true);
    rmSync(files.growing);
    expect(await run(10)).toEqual([10, 20, 30, 40]);
    expect(asked).toEqual([1]);
  });

  test("the name says what the results follow from", () => {
    expect(sliceFiles(root, "cases", { version: "2" }).growing).not.toBe(files.growing);
    expect(sliceFiles(root, "cases", { version: "1" })).toEqual(files);
  });
});
