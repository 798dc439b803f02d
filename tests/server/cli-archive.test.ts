import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { appendEntries, entriesAfter } from "../../lib/store/index.ts";
import { note, opening, second } from "../support/made-entries.ts";
import { runCommand } from "../support/run-command.ts";
import { databasesOf, STORE_KINDS } from "../support/stores.ts";

const folder = mkdtempSync(join(tmpdir(), "cornerwise-archives-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe.each(STORE_KINDS)("backup and restore on the command line, %s", (kind) => {
  const databases = databasesOf(kind);
  const cornerwise = (...args: string[]) => runCommand(args, { cwd: folder });

  it("bring a shop into another database, and say how much", async () => {
    const from = await databases.fresh();
    const old = await databases.reopen(from);
    const entries = [opening("c"), note("c", "n")];
    await appendEntries(old, { caseId: "c", entries, accountId: null, ownerId: null, now: second(1) });
    const backup = await cornerwise("backup", `${kind}.zip`, "--database", from);
    expect(backup).toMatchObject({ code: 0, out: "" });
    expect(backup.err).toMatch(/written: .*zip with 1 cases, 2 entries, 0 accounts/);
    const to = await databases.fresh();
    const restore = await cornerwise("restore", `${kind}.zip`, "--database", to);
    expect(restore).toMatchObject({ code: 0, out: "", err: "taken in: 1 cases, 2 entries, 0 accounts\n" });
    const fresh = await databases.reopen(to);
    expect((await entriesAfter(fresh, "c", 0, 9)).entries.map(({ entry }) => entry)).toEqual(entries);
    const again = await cornerwise("restore", `${kind}.zip`, "--database", to);
    expect(again).toMatchObject({ code: 3, err: expect.stringMatching(/has cases of its own.*empty one/) });
    const over = await cornerwise("backup", `${kind}.zip`, "--database", from);
    expect(over).toMatchObject({ code: 3, err: expect.stringMatching(/is there already/) });
  });

  it("leave nothing behind when something is wrong, and say what", async () => {
    const database = await databases.fresh();
    writeFileSync(join(folder, "words.zip"), "These are words.");
    const before = readdirSync(folder);
    const tries: [string[], number, RegExp][] = [
      [["restore", "words.zip", "--database", database], 3, /no zip file.*Nothing of it was kept/],
      [["restore", "nowhere.zip", "--database", database], 3, /there is no file/],
      [["restore"], 2, /name the archive/],
      [["backup"], 2, /name the file/],
      [
        ["backup", join("nowhere", "a.zip"), "--database", database],
        3,
        /cannot be written.*ENOENT.*Look whether the folder is there/,
      ],
      [["backup", "a.zip", "--database", join("nowhere", "shop.db")], 3, /there is no database/],
      [["backup", "a.zip", "--database", "postgres://x:y@127.0.0.1:1/z"], 3, /does not answer/],
    ];
    for (const [args, code, err] of tries) {
      expect(await cornerwise(...args), args.join(" ")).toMatchObject({
        code,
        err: expect.stringMatching(err),
      });
    }
    expect(readdirSync(folder)).toEqual(before);
    expect(readFileSync(join(folder, "words.zip"), "utf8")).toBe("These are words.");
  });
});
