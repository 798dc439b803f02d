import { createHash } from "node:crypto";
import { expect, test } from "vitest";
import { canonicalJson, sha256Hex } from "../../lib/knowledge/canonical.ts";
import { compileKnowledge } from "../../lib/knowledge/compile.ts";
import { goneIds } from "../../lib/knowledge/gone-ids.ts";
import { readKnowledge } from "../../lib/knowledge/read.ts";
import { freezeRelease, openRelease, parseRelease, SCHEMA_VERSION } from "../../lib/knowledge/release.ts";
import { tinyFiles, tinyKnowledge } from "../support/tiny-knowledge.ts";

const digest = (bytes: Uint8Array<ArrayBuffer>) => crypto.subtle.digest("SHA-256", bytes);

test("canonical text sorts keys at every depth and leaves lists in their order", () => {
  expect(canonicalJson({ b: [{ y: 1, x: 2 }, 1], a: null, c: undefined })).toBe(
    '{"a":null,"b":[{"x":2,"y":1},1]}',
  );
});

test("canonical text is JSON that reads back as the same value", () => {
  const value = { "ünïcode ": ['quote " and \\', "\n", true, false, null, -0.5e-7, 1e21], "": {} };
  expect(JSON.parse(canonicalJson(value))).toEqual(value);
});

test("what JSON cannot hold is refused instead of becoming null", () => {
  for (const bad of [Number.NaN, Number.POSITIVE_INFINITY, () => 1, undefined]) {
    expect(() => canonicalJson([bad])).toThrow(/JSON cannot hold/);
  }
});

test("SHA-256 is that of FIPS 180-4: the example message abc", async () => {
  // NIST, Cryptographic Standards and Guidelines, example values for SHA-256, "abc".
  expect(await sha256Hex("abc", digest)).toBe(
    "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad",
  );
});

test("a release's SHA-256 is that of node:crypto over its UTF-8 bytes", async () => {
  const release = await freezeRelease(tinyKnowledge().knowledge, digest);
  expect(release.sha256).toBe(createHash("sha256").update(release.text, "utf8").digest("hex"));
});

test("the same records in another order freeze to the same bytes", async () => {
  const files = [...tinyFiles()];
  const a = await freezeRelease(compileKnowledge(readKnowledge(new Map(files))), digest);
  const b = await freezeRelease(compileKnowledge(readKnowledge(new Map(files.reverse()))), digest);
  expect(b).toEqual(a);
});

test("opening a release gives the knowledge that was frozen", async () => {
  const { knowledge } = tinyKnowledge();
  const { text, sha256 } = await freezeRelease(knowledge, digest);
  expect(parseRelease(text)).toEqual(knowledge);
  expect(await openRelease(text, sha256.toUpperCase(), digest)).toEqual(knowledge);
});

test("a changed release is not opened", async () => {
  const { text, sha256 } = await freezeRelease(tinyKnowledge().knowledge, digest);
  const changed = text.replace('"leak":0.02', '"leak":0.03');
  expect(changed).not.toBe(text);
  await expect(openRelease(changed, sha256, digest)).rejects.toMatchObject({ code: "bad-record" });
});

test("a release of another schema version is refused and both versions are named", async () => {
  const { text } = await freezeRelease(tinyKnowledge().knowledge, digest);
  const later = text.replace(`"schemaVersion":${SCHEMA_VERSION}`, '"schemaVersion":99');
  expect(() => parseRelease(later)).toThrow(/schema version 99.*schema version 1\b/);
  expect(() => parseRelease("{}")).toThrow(/schema version none.*schema version 1\b/);
  expect(() => parseRelease("null")).toThrow(/schema version none/);
});

test("text that is no JSON, or of another form, is refused with what is wrong", () => {
  expect(() => parseRelease("{")).toThrow(expect.objectContaining({ code: "not-readable" }));
  expect(() => parseRelease('{"schemaVersion":1}')).toThrow(/faults/);
});

test("an id that an earlier release held and that has no record now is told", () => {
  const { knowledge } = tinyKnowledge();
  expect(goneIds(knowledge, tinyKnowledge().authored)).toEqual([]);
  const { authored } = tinyKnowledge((records) => {
    delete records["faults/rack-worn.json"];
  });
  expect(goneIds(knowledge, authored)).toEqual([
    expect.stringContaining("faults/rack-worn.json was in release 0.1.0 and is gone"),
  ]);
});

test("an id that ended and kept its record is not gone", () => {
  const { knowledge } = tinyKnowledge();
  const { authored } = tinyKnowledge((records) => {
    const ended = { since: "0.2.0", reason: "Not a fault of its own." };
    records["faults/rack-worn.json"] = { ...records["faults/rack-worn.json"], ended };
  });
  expect(goneIds(knowledge, authored)).toEqual([]);
});
