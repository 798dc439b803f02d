import { expect, test } from "vitest";
import { CornerwiseError } from "../../lib/errors.ts";
import type { KnowledgeProblem } from "../../lib/knowledge/problems.ts";
import { readKnowledge } from "../../lib/knowledge/read.ts";
import { patch, tinyFiles } from "../support/tiny-knowledge.ts";

function problemsOf(files: ReadonlyMap<string, string>): KnowledgeProblem[] {
  try {
    readKnowledge(files);
  } catch (error) {
    if (!(error instanceof CornerwiseError)) throw error;
    expect(error.code).toBe("bad-record");
    const problems = error.details.problems as KnowledgeProblem[];
    for (const { file, what } of problems) {
      expect(error.message).toContain(file);
      expect(error.message).toContain(what);
    }
    return problems;
  }
  throw new Error("the reader accepted it");
}

test("records come back in the order of their ids, whatever order the files are in", () => {
  const files = [...tinyFiles()];
  const forward = readKnowledge(new Map(files));
  const backward = readKnowledge(new Map(files.reverse()));
  expect(forward.faults.map((fault) => fault.id)).toEqual(["ball-joint-worn", "bar-link-worn", "rack-worn"]);
  expect(backward).toEqual(forward);
});

test("defaults of the authored form are filled in", () => {
  const [part] = readKnowledge(tinyFiles()).parts;
  expect(part?.id).toBe("ball-joint");
  expect(part?.otherNames).toEqual([]);
});

test("every problem of every file is told at once, with file, path and how to mend it", () => {
  const files = tinyFiles((records) => {
    patch(records, "parts/rack.json", { colour: "black" });
    patch(records, "faults/rack-worn.json", { kind: "tired", life: { share: 2 } });
    patch(records, "checks/feel-link.json", { minutes: 0 });
  });
  files.set("parts/bar-link.json", "{");
  files.delete("scale.json");
  const problems = problemsOf(files);
  const found = problems.map(({ file, path }) => `${file} ${path}`.trim());
  expect(found).toEqual(
    expect.arrayContaining([
      "scale.json",
      "parts/bar-link.json",
      "parts/rack.json",
      "faults/rack-worn.json kind",
      "faults/rack-worn.json life.share",
      "checks/feel-link.json minutes",
    ]),
  );
  const mend = (file: string) => problems.find((problem) => problem.file === file)?.mend;
  expect(mend("parts/rack.json")).toBe('Remove or rename "colour".');
  expect(mend("checks/feel-link.json")).toBe("Give at least 0.5.");
});

test("an id that is not the file name is a problem of that file", () => {
  const files = tinyFiles();
  files.set("parts/horn.json", files.get("parts/rack.json") ?? "");
  expect(problemsOf(files)).toMatchObject([{ file: "parts/horn.json", path: "id" }]);
});

test("a file where no record lies is a problem, not passed over", () => {
  const files = tinyFiles();
  files.set("prats/horn.json", "{}");
  files.set("parts/deep/horn.json", "{}");
  files.set("parts/notes.txt", "hello");
  expect(problemsOf(files).map(({ file }) => file)).toEqual([
    "parts/deep/horn.json",
    "parts/notes.txt",
    "prats/horn.json",
  ]);
});

test("exceptions, releases and JSON Schemas may lie beside the records", () => {
  const files = tinyFiles();
  files.set("lint-exceptions.json", "[]");
  files.set("json-schema/fault.schema.json", "{}");
  files.set("releases/0.1.0/compiled.json", "{}");
  expect(readKnowledge(files).parts).toHaveLength(3);
});

test("an id cannot be a name that objects bring with them", () => {
  const files = tinyFiles();
  files.set(
    "parts/__proto__.json",
    JSON.stringify({ ...JSON.parse(files.get("parts/rack.json") ?? ""), id: "__proto__" }),
  );
  expect(problemsOf(files)).toMatchObject([{ file: "parts/__proto__.json", path: "id" }]);
});
