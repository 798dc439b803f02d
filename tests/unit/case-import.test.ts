import { describe, expect, it } from "vitest";
import { CaseFile } from "../../lib/case/case-file.ts";
import { toJsonSchema } from "../../lib/knowledge/json-schema.ts";
import { CornerwiseError } from "../../lib/errors.ts";
import { CASE_LIMITS, exportCase, foldCase, importCase, type KnownEntry } from "../../lib/case/index.ts";

const opened: KnownEntry = {
  id: "e1",
  caseId: "c1",
  at: "2026-01-01T09:00:00.000Z",
  by: "ana",
  kind: "opened",
  release: "aaa",
  car: { drive: "front", front: { layout: "strut" }, odometerKm: 120_000 },
  customer: "Invented Customer",
  vehicle: "invented hatchback",
};
const told: KnownEntry = {
  id: "e2",
  caseId: "c1",
  at: "2026-01-01T09:00:01.000Z",
  by: "ana",
  kind: "told",
  text: "clunk",
};

const file = (over: Record<string, unknown> = {}, entries: unknown[] = [opened, told]): string =>
  JSON.stringify({ format: "cornerwise-case", schemaVersion: 1, caseId: "c1", entries, ...over });

function failureOf(text: string): CornerwiseError {
  try {
    importCase(text);
  } catch (error) {
    if (error instanceof CornerwiseError) return error;
    throw error;
  }
  throw new Error("was taken in");
}

describe("importing a case file", () => {
  it("follows the published form, which refuses what the reader refuses", () => {
    const written: unknown = JSON.parse(exportCase([told, opened]));
    expect(CaseFile.parse(written)).toEqual(written);
    const newer = { ...told, id: "e3", kind: "of-a-newer-version", more: 1 };
    expect(CaseFile.safeParse(JSON.parse(file({}, [opened, newer]))).success).toBe(true);
    for (const bad of [file({ format: "other" }), file({}, []), file({}, [{ ...told, at: "yesterday" }])]) {
      expect(CaseFile.safeParse(JSON.parse(bad)).success).toBe(false);
      expect(() => importCase(bad)).toThrow(CornerwiseError);
    }
    expect(toJsonSchema(CaseFile)).toMatchObject({
      required: ["format", "schemaVersion", "caseId", "entries"],
      additionalProperties: false,
    });
  });

  it("takes in what export wrote", () => {
    expect(importCase(exportCase([told, opened, told]))).toEqual({ caseId: "c1", entries: [opened, told] });
  });

  it("refuses to export no case or two", () => {
    expect(() => exportCase([])).toThrow(/no entries/);
    expect(() => exportCase([opened, { ...told, caseId: "c2" }])).toThrow(/2 cases/);
  });

  // Every message says what is wrong, where, and how to mend it.
  it.each([
    ["no JSON", "{", "not-readable", /not JSON.*saved whole/s],
    ["another file", "{}", "bad-request", /"format" must be "cornerwise-case"/],
    ["a list", "[]", "bad-request", /cannot be taken in.*Export the case again/s],
    ["a newer form", file({ schemaVersion: 2 }), "bad-request", /form 2.*reads form 1.*Update/s],
    ["no entries", file({}, []), "bad-request", /entries/],
    ["an unknown field of the file", file({ extra: 1 }), "bad-request", /extra/],
    ["a wrong field", file({}, [opened, { ...told, text: 7 }]), "bad-request", /Entry 2.*told.*text.*Mend/s],
    ["no kind", file({}, [opened, { id: "e9" }]), "bad-request", /Entry 2/],
    [
      "a time with an offset",
      file({}, [{ ...opened, at: "2026-01-01T09:00:00+01:00" }]),
      "bad-request",
      /Entry 1.*at: give the time in UTC/s,
    ],
    [
      "a time without milliseconds",
      file({}, [{ ...opened, at: "2026-01-01T09:00:00Z" }]),
      "bad-request",
      /UTC/,
    ],
    ["a day that is not", file({}, [{ ...opened, at: "2026-02-30T09:00:00.000Z" }]), "bad-request", /UTC/],
    [
      "another case's entry",
      file({}, [opened, { ...told, caseId: "c2" }]),
      "bad-request",
      /entry 2.*case c2/s,
    ],
    [
      "a car nested too deep",
      file({}, [{ ...opened, car: { a: { b: { c: 1 } } } }]),
      "bad-request",
      /Entry 1.*car/s,
    ],
  ])("refuses %s", (_what, text, code, message) => {
    const failure = failureOf(text);
    expect(failure.code).toBe(code);
    expect(failure.message).toMatch(message);
  });

  it("refuses what is too big: text, number of entries, one entry, depth", () => {
    expect(failureOf(" ".repeat(CASE_LIMITS.characters + 1)).message).toMatch(/characters/);
    const many = Array.from({ length: CASE_LIMITS.entries + 1 }, (_, i) => ({
      ...told,
      id: `n${i}`,
      text: "x",
    }));
    expect(failureOf(file({}, many)).message).toMatch(/10001 entries, 10000 at most/);
    const heavy = {
      id: "e3",
      caseId: "c1",
      at: told.at,
      by: "ana",
      kind: "hologram",
      data: "x".repeat(30_000),
    };
    expect(failureOf(file({}, [opened, heavy])).message).toMatch(/Entry 2.*too long.*20000 at most/s);
    const deep = `${"[".repeat(200_000)}${"]".repeat(200_000)}`;
    expect(failureOf(file({}, []).replace("[]", deep)).message).toMatch(/deeper than 16/);
  });

  it("does not count brackets inside text as depth", () => {
    const brackets = { ...told, text: `${"[{".repeat(50)} \\" ]` };
    expect(importCase(file({}, [opened, brackets])).entries[1]).toEqual(brackets);
  });

  it("drops keys that name the prototype, wherever they stand", () => {
    const evil = file()
      .replace('"drive":"front"', '"drive":"front","__proto__":{"polluted":"car"}')
      .replace(
        '"kind":"told"',
        '"kind":"told","__proto__":{"polluted":"entry"},"more":{"__proto__":{"polluted":1}}',
      );
    expect(evil).toContain("__proto__");
    const { entries } = importCase(evil);
    expect(Reflect.get({}, "polluted")).toBeUndefined();
    for (const entry of entries) expect(Reflect.get(entry, "polluted")).toBeUndefined();
    expect(JSON.stringify(entries)).not.toContain("polluted");
    expect(foldCase(entries).car).toEqual(opened.car);
  });

  it("keeps an entry of a kind that it does not know, and lets it change nothing", () => {
    const photo = {
      id: "e3",
      caseId: "c1",
      at: "2026-01-01T09:00:02.000Z",
      by: "ana",
      kind: "hologram",
      size: 3,
    };
    const { entries } = importCase(file({}, [opened, told, photo]));
    const { timeline, ...state } = foldCase(entries);
    const { timeline: before, ...stateBefore } = foldCase([opened, told]);
    expect(state).toEqual(stateBefore);
    expect(timeline).toHaveLength(before.length + 1);
    expect(timeline[2]).toMatchObject({ ignored: true, entry: photo });
  });
});
