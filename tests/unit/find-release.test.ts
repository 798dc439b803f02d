import { describe, expect, test } from "vitest";
import { findRelease, wantedWords } from "../../app/knowledge/find-release.ts";

const sum = (digit: string) => digit.repeat(64);
const served = [
  { version: "2.0.0", sha256: sum("c") },
  { version: "1.0.0", sha256: sum("a") },
];
const kept = [
  { version: "1.5.0", sha256: sum("b") },
  { version: "2.0.0", sha256: sum("d") },
];

// Our own rule, no published source: a case is weighed with the release that it names or, when nobody has it, with none.
describe("the release that a case means", () => {
  test("is found by its sum at the server and on the device", () => {
    expect(findRelease({ release: sum("a") }, served, kept)).toEqual(served[1]);
    expect(findRelease({ release: sum("b") }, served, kept)).toEqual(kept[0]);
  });

  test("is another one than the newest of the same version when the sums differ", () => {
    expect(findRelease({ release: sum("d"), knowledgeVersion: "2.0.0" }, served, kept)).toEqual(kept[1]);
  });

  test("is none when nobody has that sum, whatever version is named beside it", () => {
    expect(findRelease({ release: sum("e"), knowledgeVersion: "2.0.0" }, served, kept)).toBeUndefined();
    expect(findRelease({ release: sum("b"), knowledgeVersion: "2.0.0" }, served, [])).toBeUndefined();
  });

  test("is found by version in a case that names no sum, at the server first", () => {
    expect(findRelease({ release: "2.0.0" }, served, kept)).toEqual(served[0]);
    expect(findRelease({ release: "1.5.0" }, served, kept)).toEqual(kept[0]);
    expect(findRelease({ release: "0.9.0" }, served, kept)).toBeUndefined();
  });

  test("is called by its version, by what the case names when it has none", () => {
    expect(wantedWords({ release: sum("a"), knowledgeVersion: "1.0.0" })).toBe("1.0.0");
    expect(wantedWords({ release: "1.0.0" })).toBe("1.0.0");
  });
});
