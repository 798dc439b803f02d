import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { EXIT } from "../../lib/cli/command.ts";
import { compareVersions } from "../../lib/cli/files.ts";
import { LINT_RULES } from "../../lib/knowledge/lint/index.ts";
import { runCommand } from "../support/run-command.ts";
import { tinyFolder, writeTiny } from "../support/tiny-folder.ts";
import { patch } from "../support/tiny-knowledge.ts";

test("lint is content with sound knowledge", async () => {
  const { code, out, err } = await runCommand(["lint", tinyFolder()]);
  expect(code).toBe(EXIT.ok);
  expect(out).toBe("");
  expect(err).toBe("no problem found\n");
});

test("lint tells rule, record, what and how to mend it, as lines, counts or JSON", async () => {
  const folder = tinyFolder((records) => patch(records, "faults/rack-worn.json", { decisive: [] }));
  const lines = await runCommand(["lint", folder]);
  expect(lines.code).toBe(EXIT.problems);
  expect(lines.out).toMatch(/^fault-has-decisive: faults\/rack-worn\.json: nothing proves it\. Name in /);
  expect((await runCommand(["lint", folder, "--summary"])).out.trim()).toBe("1  fault-has-decisive");
  expect(JSON.parse((await runCommand(["lint", folder, "--json"])).out)).toMatchObject([
    { rule: "fault-has-decisive", record: "faults/rack-worn.json" },
  ]);
  expect((await runCommand(["lint", folder, "--rule", "grades-fall"])).code).toBe(EXIT.ok);
  expect((await runCommand(["lint", folder, "--rule", "grade-fall"])).code).toBe(EXIT.badUse);
});

test("lint --rules says what each rule demands", async () => {
  const { code, out } = await runCommand(["lint", "--rules"]);
  expect(code).toBe(EXIT.ok);
  const named = out
    .trim()
    .split("\n")
    .map((line) => line.split(":")[0]);
  expect(named).toEqual(LINT_RULES.map((rule) => rule.name));
});

test("lint reads the exceptions that lie beside the records", async () => {
  const folder = tinyFolder((records) => patch(records, "faults/rack-worn.json", { decisive: [] }));
  const exception = {
    rule: "fault-has-decisive",
    record: "faults/rack-worn.json",
    why: "An invented reason.",
  };
  writeFileSync(join(folder, "lint-exceptions.json"), JSON.stringify([exception]));
  expect((await runCommand(["lint", folder])).code).toBe(EXIT.ok);
  writeTiny(folder);
  const idle = await runCommand(["lint", folder]);
  expect(idle.code).toBe(EXIT.problems);
  expect(idle.out).toMatch(/^exception-needed: lint-exceptions\.json: /);
});

test("lint lists what cannot be read or compiled as problems, not as a failure", async () => {
  const unreadable = tinyFolder((records) => patch(records, "parts/rack.json", { colour: "black" }));
  const read = await runCommand(["lint", unreadable]);
  expect(read.code).toBe(EXIT.problems);
  expect(read.out).toMatch(/^bad-record: parts\/rack\.json: /);
  const unresolved = tinyFolder((records) => patch(records, "faults/rack-worn.json", { part: "no-part" }));
  const compiled = await runCommand(["lint", unresolved]);
  expect(compiled.code).toBe(EXIT.problems);
  expect(compiled.out).toMatch(/^unknown-id: faults\/rack-worn\.json: part: there is no part "no-part"/);
});

test("lint of a folder that holds no knowledge is a failure that says so", async () => {
  const { code, err } = await runCommand(["lint", "no/such/folder"]);
  expect(code).toBe(EXIT.failure);
  expect(err).toMatch(/no manifest\.json/);
});

test("freeze writes the compiled knowledge and its sum, once", async () => {
  const folder = tinyFolder();
  const first = await runCommand(["freeze", folder]);
  expect(first.code).toBe(EXIT.ok);
  const text = readFileSync(join(folder, "releases/0.1.0/compiled.json"));
  const sums = readFileSync(join(folder, "releases/0.1.0/SHA256SUMS"), "utf8");
  // GNU coreutils manual, "sha2 utilities": sum, two spaces, file name.
  expect(sums).toBe(`${createHash("sha256").update(text).digest("hex")}  compiled.json\n`);
  expect(first.out).toBe(sums);
  const again = await runCommand(["freeze", folder]);
  expect(again.code).toBe(EXIT.ok);
  expect(again.err).toContain("already there, the same");
});

test("freeze refuses to change a frozen release and leaves it as it was", async () => {
  const folder = tinyFolder();
  await runCommand(["freeze", folder]);
  const file = join(folder, "releases/0.1.0/compiled.json");
  const before = readFileSync(file, "utf8");
  writeTiny(folder, (records) => patch(records, "complaints/noise.json", { leak: 0.05 }));
  const refused = await runCommand(["freeze", folder]);
  expect(refused.code).toBe(EXIT.failure);
  expect(refused.err).toMatch(/Raise "version" in manifest\.json/);
  expect(readFileSync(file, "utf8")).toBe(before);
  writeTiny(folder, (records) => {
    patch(records, "complaints/noise.json", { leak: 0.05 });
    patch(records, "manifest.json", { version: "0.2.0" });
  });
  expect((await runCommand(["freeze", folder])).code).toBe(EXIT.ok);
  expect(existsSync(join(folder, "releases/0.2.0/SHA256SUMS"))).toBe(true);
});

test("freeze refuses while an id of an earlier release has no record", async () => {
  const folder = tinyFolder();
  await runCommand(["freeze", folder]);
  writeTiny(folder, (records) => {
    patch(records, "manifest.json", { version: "0.2.0" });
    delete records["faults/rack-worn.json"];
  });
  const { code, err } = await runCommand(["freeze", folder]);
  expect(code).toBe(EXIT.problems);
  expect(err).toMatch(/faults\/rack-worn\.json was in release 0\.1\.0 and is gone/);
  expect(existsSync(join(folder, "releases/0.2.0"))).toBe(false);
});

test("diff compares folders, frozen releases and compiled files", async () => {
  const folder = tinyFolder();
  await runCommand(["freeze", folder]);
  const release = join(folder, "releases/0.1.0");
  for (const same of [folder, release, join(release, "compiled.json")]) {
    const { code, out } = await runCommand(["diff", release, same]);
    expect(code, same).toBe(EXIT.ok);
    expect(out).toBe("from 0.1.0 to 0.1.0: no difference\n");
  }
  writeTiny(folder, (records) => patch(records, "complaints/noise.json", { leak: 0.04 }));
  const { code, out } = await runCommand(["diff", release, folder]);
  expect(code).toBe(EXIT.problems);
  expect(out).toContain("complaints changed: noise\n");
  // ln((0.04 / 0.96) / (0.02 / 0.98)) = 0.7138
  expect(out).toContain("complaints/noise leak: 0.02 -> 0.04 (log-odds +0.714)\n");
  // A changed wear life shows as the change of the prior on a car of which nothing is known.
  writeTiny(folder, (records) => patch(records, "faults/rack-worn.json", { life: { years: 30, shape: 2 } }));
  expect((await runCommand(["diff", release, folder])).out).toMatch(
    /^faults\/rack-worn prior: .* \(log-odds -/m,
  );
  writeTiny(folder, (records) => patch(records, "complaints/noise.json", { leak: 0.04 }));
  const json = JSON.parse((await runCommand(["diff", release, folder, "--json"])).out);
  expect(json.records.complaints.changed).toEqual(["noise"]);
  expect((await runCommand(["diff", release])).code).toBe(EXIT.badUse);
});

test("diff knows a frozen release by its version", async () => {
  const home = tinyFolder();
  const folder = join(home, "knowledge");
  mkdirSync(folder);
  writeTiny(folder);
  await runCommand(["freeze"], { cwd: home });
  expect((await runCommand(["diff", "0.1.0", "knowledge"], { cwd: home })).code).toBe(EXIT.ok);
  const unknown = await runCommand(["diff", "0.1.0", "9.9.9"], { cwd: home });
  expect(unknown.code).toBe(EXIT.failure);
  expect(unknown.err).toMatch(/release 9\.9\.9 is not frozen here\. Frozen: 0\.1\.0/);
});

test("a damaged release is noticed by its sum", async () => {
  const folder = tinyFolder();
  await runCommand(["freeze", folder]);
  const release = join(folder, "releases/0.1.0");
  const file = join(release, "compiled.json");
  writeFileSync(file, readFileSync(file, "utf8").replace('"leak":0.02', '"leak":0.03'));
  const { code, err } = await runCommand(["parts", "--knowledge", release]);
  expect(code).toBe(EXIT.failure);
  expect(err).toMatch(/SHA-256/);
});

test("schema lists its names, prints one, and knows no other", async () => {
  const names = (await runCommand(["schema"])).out.trim().split("\n");
  expect(names).toEqual(
    expect.arrayContaining(["weigh-request", "weigh-answer", "knowledge", "fault", "manifest"]),
  );
  for (const name of names) {
    const schema = JSON.parse((await runCommand(["schema", name])).out);
    expect(schema.type, name).toBe("object");
    expect(Object.keys(schema.properties ?? {}).length, name).toBeGreaterThan(0);
  }
  const { code, err } = await runCommand(["schema", "fualt"]);
  expect(code).toBe(EXIT.badUse);
  expect(err).toContain("fault");
});

test("schema --write puts one file for each record into the folder named", async () => {
  const folder = tinyFolder();
  expect((await runCommand(["schema", "--write", folder])).code).toBe(EXIT.ok);
  const fault = JSON.parse(readFileSync(join(folder, "json-schema/fault.schema.json"), "utf8"));
  expect(fault.required).toContain("remedy");
});

test("findings lists every id that an answer can name", async () => {
  const { code, out } = await runCommand(["findings", "--json", "--knowledge", tinyFolder()]);
  expect(code).toBe(EXIT.ok);
  const ids = JSON.parse(out).map((item: { id: string }) => item.id);
  expect(ids.sort()).toEqual(
    [
      "noise",
      "noise:small-bumps",
      "noise:from-front",
      "noise:from-rear",
      "noise:from-left",
      "noise:from-right",
      "link-play",
      "joint-play",
      "rack-play",
      "kerb-strike",
    ].sort(),
  );
});

test("parts are found by another name and in spite of a misspelling", async () => {
  const folder = tinyFolder();
  for (const words of ["drop link", "dorp link", "bar link"]) {
    const { code, out } = await runCommand([
      "parts",
      "--search",
      words,
      "--limit",
      "1",
      "--knowledge",
      folder,
    ]);
    expect(code, words).toBe(EXIT.ok);
    expect(out, words).toMatch(/^bar-link {2}bar link {2}\[.*faults: bar-link-worn\]\n$/);
  }
});

test("checks are found, and nothing that fits is said as such", async () => {
  const folder = tinyFolder();
  const found = await runCommand(["checks", "--search", "pry joint", "--knowledge", folder]);
  expect(found.out).toMatch(/^pry-joint {2}.*settles: joint-play/);
  const none = await runCommand(["checks", "--search", "xylophone", "--knowledge", folder]);
  expect(none.code).toBe(EXIT.problems);
  expect(none.err).toMatch(/nothing fits "xylophone"/);
});

test("versions are ordered by number, not by letter", () => {
  expect(["1.9.2", "1.10.0", "0.12.0", "1.9.10"].sort(compareVersions)).toEqual([
    "0.12.0",
    "1.9.2",
    "1.9.10",
    "1.10.0",
  ]);
});

test("moved weighs the worked cases with both versions and tells those that moved", async () => {
  const folder = tinyFolder();
  await runCommand(["freeze", folder]);
  const release = join(folder, "releases/0.1.0");
  const same = await runCommand(["moved", release, folder, "--cases", folder]);
  expect(same).toMatchObject({ code: EXIT.ok, out: "" });
  expect(same.err).toBe("0 of 1 worked cases moved from 0.1.0 to 0.1.0\n");
  expect((await runCommand(["moved", release, folder, "--cases", folder, "--all"])).out).toMatch(
    /^knock: A knock over small bumps\n {2}not moved; the leader is front left bar link: worn, 0\.\d\d\n$/,
  );
  writeTiny(folder, (records) => patch(records, "observations/link-play.json", { leak: 0.6 }));
  const moved = await runCommand(["moved", release, folder, "--cases", folder]);
  expect(moved.code).toBe(EXIT.problems);
  expect(moved.out).toMatch(/the leader.* front left/);
  const json = JSON.parse((await runCommand(["moved", release, folder, "--cases", folder, "--json"])).out);
  expect(json).toMatchObject([{ id: "knock", before: { truth: { rank: 1 } }, after: { leftOut: [] } }]);
  expect((await runCommand(["moved", release])).code).toBe(EXIT.badUse);
});
