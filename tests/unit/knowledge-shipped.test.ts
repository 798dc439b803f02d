import { createHash } from "node:crypto";
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { compileKnowledge } from "../../lib/knowledge/compile.ts";
import { readExceptions } from "../../lib/knowledge/lint/exceptions.ts";
import { lintKnowledge } from "../../lib/knowledge/lint/index.ts";
import { problemLine } from "../../lib/knowledge/problems.ts";
import { readKnowledge } from "../../lib/knowledge/read.ts";
import { freezeRelease, parseRelease } from "../../lib/knowledge/release.ts";
import { unresolvedReferences } from "../../lib/knowledge/unresolved.ts";
import { shippedFiles } from "../support/shipped-knowledge.ts";

const RELEASES = join(import.meta.dirname, "../../knowledge/releases");

test("the shipped knowledge reads and every id in it resolves", () => {
  expect(unresolvedReferences(readKnowledge(shippedFiles())).map(problemLine)).toEqual([]);
});

test("the lint has nothing to say of the shipped knowledge", () => {
  const files = shippedFiles();
  const authored = readKnowledge(files);
  const knowledge = compileKnowledge(authored);
  expect(knowledge.faults.length).toBeGreaterThan(50);
  const report = lintKnowledge(
    knowledge,
    authored,
    readExceptions(files.get("lint-exceptions.json") ?? "[]"),
  );
  expect(report.map(({ rule, record, message }) => `${rule}: ${record}: ${message}`)).toEqual([]);
}, 240_000);

test.runIf(existsSync(RELEASES))(
  "every frozen release opens, is named after its version and has the sum that lies beside it",
  () => {
    const versions = readdirSync(RELEASES);
    expect(versions.length).toBeGreaterThan(0);
    for (const version of versions) {
      const bytes = readFileSync(join(RELEASES, version, "compiled.json"));
      const sums = readFileSync(join(RELEASES, version, "SHA256SUMS"), "utf8");
      expect(sums, version).toBe(`${createHash("sha256").update(bytes).digest("hex")}  compiled.json\n`);
      expect(parseRelease(bytes.toString("utf8")).version).toBe(version);
    }
  },
);

test.runIf(existsSync(RELEASES))(
  "while the manifest names a frozen version the records are those that were frozen",
  async () => {
    const knowledge = compileKnowledge(readKnowledge(shippedFiles()));
    const frozen = join(RELEASES, knowledge.version, "compiled.json");
    const { text } = await freezeRelease(knowledge, (bytes) => crypto.subtle.digest("SHA-256", bytes));
    // Raise "version" in manifest.json with the first change after a freeze.
    expect(existsSync(frozen) ? readFileSync(frozen, "utf8") === text : true).toBe(true);
  },
);
