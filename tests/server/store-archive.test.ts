import { createHash } from "node:crypto";
import fc from "fast-check";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { type Entry, exportCase, importCase } from "../../lib/case/index.ts";
import {
  appendEntries,
  entriesAfter,
  keepPhoto,
  makeAccount,
  makeLink,
  removeCase,
  restoreArchive,
  type Store,
  writeArchive,
  writeSetting,
} from "../../lib/store/index.ts";
import { made, note, opening, second } from "../support/made-entries.ts";
import { fillExercises, handOut } from "../support/made-exercise.ts";
import { type Databases, databasesOf, STORE_KINDS } from "../support/stores.ts";

const NOW = "2026-03-02T08:00:00.000Z";

async function archiveOf(store: Store): Promise<Uint8Array> {
  const pieces: Uint8Array[] = [];
  for await (const piece of writeArchive(store, NOW)) pieces.push(piece);
  return Uint8Array.from(Buffer.concat(pieces));
}

const send = (store: Store, caseId: string, entries: readonly Entry[], who: string | null = null) =>
  appendEntries(store, { caseId, entries, accountId: who, ownerId: who, now: second(entries.length) });

/** A shop with one of everything: people, links, closed, removed and newer cases, a session that is nobody's business. */
async function fill(store: Store): Promise<void> {
  for (const [id, role, email] of [
    ["olga", "owner", "olga@harbour-lane.example"],
    ["tom", "trainee", "tom@harbour-lane.example"],
  ] as const) {
    const person = { id, role, email, name: `Invented ${id}`, passwordHash: `hash of ${id}` };
    await makeAccount(store, { ...person, now: second(0) });
  }
  await send(
    store,
    "c1",
    [opening("c1", { plate: "AB 1\u0000", customer: "Zoë, \u{1F697}" }), note("c1", "n")],
    "tom",
  );
  await send(store, "c1", [made("c1", "v", second(9), { kind: "verdict", suspects: [], proof: [] })], "olga");
  await send(store, "C-2", [
    note("C-2", "late"),
    opening("C-2"),
    made("C-2", "p", second(3), { kind: "hologram\u0000" }),
  ]);
  await send(store, "gone", [opening("gone"), note("gone", "private")], "tom");
  await removeCase(store, "gone", second(50));
  const link = { kind: "read", target: "c1", madeBy: "olga", madeAt: second(1), expiresAt: second(999) };
  await makeLink(store, { ...link, id: "l1", token: "token-of-the-link" });
  await makeLink(store, { ...link, id: "l2", kind: "set-up", target: "shop", token: "code" });
  await keepPhoto(store, {
    ...{ caseId: "c1", id: "ph", accountId: "tom", ownerId: null, linkId: "l1", now: second(60) },
    picture: { bytes: Uint8Array.from([0xff, 0xd8, 0, 255, 10, 13]), width: 3, height: 2 },
    entry: made("c1", "ph", second(60), { kind: "photo", photo: "ph", width: 3, height: 2 }),
  });
  await writeSetting(store, "secret", "signs-the-sessions");
  await fillExercises(store);
}

/** What is in the shop, alike in both databases. */
async function contents(store: Store): Promise<unknown> {
  const { db } = store;
  const plain = (rows: unknown[]): unknown =>
    JSON.parse(JSON.stringify(rows), (key, value: unknown) =>
      key === "disabled" || key === "emailVerified" ? Boolean(value) : value,
    );
  return {
    cases: plain(await db.selectFrom("cases").selectAll().orderBy("id").execute()),
    entries: plain(await db.selectFrom("entries").selectAll().orderBy("case_id").orderBy("seq").execute()),
    links: plain(await db.selectFrom("links").selectAll().where("kind", "=", "read").orderBy("id").execute()),
    photos: (await db.selectFrom("photos").selectAll().execute()).map((row) => ({
      ...row,
      bytes: [...new Uint8Array(row.bytes as ArrayBuffer)],
    })),
    people: plain(await db.selectFrom("user").selectAll().orderBy("id").execute()),
    signIns: plain(await db.selectFrom("account").selectAll().orderBy("id").execute()),
    exercises: plain(await db.selectFrom("exercises").selectAll().orderBy("id").execute()),
    handOuts: plain(await db.selectFrom("hand_outs").selectAll().orderBy("id").execute()),
    attempts: plain(await db.selectFrom("attempts").selectAll().orderBy("id").execute()),
    steps: plain(
      await db.selectFrom("attempt_entries").selectAll().orderBy("attempt_id").orderBy("seq").execute(),
    ),
  };
}

const EMPTY = {
  cases: [],
  entries: [],
  links: [],
  photos: [],
  people: [],
  signIns: [],
  exercises: [],
  handOuts: [],
  attempts: [],
  steps: [],
};
const BAD = { name: "StoreProblem", code: "bad-archive" };

/** The same archive with some of its files replaced, added or, by undefined, left out. */
function changed(archive: Uint8Array, files: Record<string, string | undefined>): Uint8Array {
  const all: Record<string, Uint8Array | undefined> = unzipSync(archive);
  for (const [name, text] of Object.entries(files))
    all[name] = text === undefined ? undefined : strToU8(text);
  return zipSync(Object.fromEntries(Object.entries(all).filter(([, file]) => file !== undefined)) as never);
}

const textOf = (archive: Uint8Array, name: string): string =>
  strFromU8(unzipSync(archive)[name] ?? new Uint8Array());

const pairs = STORE_KINDS.flatMap((from) => STORE_KINDS.map((to) => ({ from, to })));

describe.each(pairs)("an archive of $from taken into $to", ({ from, to }) => {
  const source = databasesOf(from);
  const target = databasesOf(to);

  it("gives the whole shop again, and the same archive", async () => {
    const old = await source.open();
    await fill(old);
    const archive = await archiveOf(old);
    const fresh = await target.open();
    expect(await restoreArchive(fresh, archive)).toEqual({
      cases: 3,
      entries: 7,
      accounts: 2,
      links: 1,
      photos: 1,
      exercises: 1,
      handOuts: 1,
      attempts: 2,
    });
    expect(await contents(fresh)).toEqual(await contents(old));
    expect(unzipSync(await archiveOf(fresh))).toEqual(unzipSync(archive));
    await send(fresh, "c1", [
      opening("c1", { plate: "AB 1\u0000", customer: "Zoë, \u{1F697}" }),
      note("c1", "next"),
    ]);
    expect((await entriesAfter(fresh, "c1", 4, 9)).entries).toEqual([{ seq: 5, entry: note("c1", "next") }]);
    await expect(send(fresh, "gone", [opening("gone")])).rejects.toMatchObject({ code: "case-removed" });
  });
});

describe.each(STORE_KINDS)("archives of the store, %s", (kind) => {
  const databases: Databases = databasesOf(kind);

  it("hold no session, no setting, no token, and one case a line that is a whole case file", async () => {
    const store = await databases.open();
    await fill(store);
    const at = { createdAt: NOW, updatedAt: NOW, expiresAt: NOW, ipAddress: null, userAgent: null };
    await store.db
      .insertInto("session")
      .values({ id: "s", userId: "tom", token: "signed-in", ...at })
      .execute();
    const files = unzipSync(await archiveOf(store));
    expect(Object.keys(files)).toEqual([
      "cases/00001.jsonl",
      "photos/00001.jsonl",
      "exercises/00001.jsonl",
      "hand-outs/00001.jsonl",
      "attempts/00001.jsonl",
      "accounts.json",
      "links.json",
      "manifest.json",
    ]);
    const all = Object.values(files)
      .map((file) => strFromU8(file))
      .join("");
    for (const secret of ["signed-in", "signs-the-sessions", "token-of-the-link", "token-of-e1", "private"]) {
      expect(all).not.toContain(secret);
    }
    const lines = textOf(await archiveOf(store), "cases/00001.jsonl")
      .trim()
      .split("\n");
    const cases = lines.map((line) => JSON.parse(line) as { id: string; entries: { entry: Entry }[] });
    expect(cases.map(({ id }) => id)).toEqual(["C-2", "c1", "gone"]);
    const entries = cases[1]?.entries.map(({ entry }) => entry) ?? [];
    expect(importCase(exportCase(entries)).entries).toHaveLength(4);
  });

  it("show one moment, while others go on writing", async () => {
    const store = await databases.open();
    const long = (caseId: string): Entry[] => [
      opening(caseId),
      ...Array.from({ length: 500 }, (_, i) => note(caseId, `n${i}`, "long ".repeat(800))),
    ];
    for (const caseId of ["a", "b", "c", "d"]) await send(store, caseId, long(caseId));
    const pieces = writeArchive(store, NOW);
    const first = await pieces.next();
    await send(store, "d", [note("d", "later")]);
    await send(store, "e", [opening("e")]);
    const all = [first.value as Uint8Array];
    for await (const piece of pieces) all.push(piece);
    const fresh = await databases.open();
    expect(await restoreArchive(fresh, Uint8Array.from(Buffer.concat(all)))).toMatchObject({
      cases: 4,
      entries: 2004,
    });
    expect((await entriesAfter(fresh, "d", 0, 1)).version).toBe(501);
  });

  it("let the database go when nobody takes the rest of them", async () => {
    const store = await databases.open();
    await fill(store);
    for (let i = 0; i < 20; i++) {
      const pieces = writeArchive(store, NOW);
      await pieces.next();
      await pieces.return(undefined);
    }
    await send(store, "after", [opening("after")]);
  });

  it("go into an empty shop only; a person who is there already keeps the account", async () => {
    const old = await databases.open();
    await fill(old);
    const archive = await archiveOf(old);
    const taken = await databases.open();
    await send(taken, "own", [opening("own")]);
    await expect(restoreArchive(taken, archive)).rejects.toMatchObject({ code: "not-empty" });

    const fresh = await databases.open();
    const me = { id: "new-id", role: "owner", email: "tom@harbour-lane.example", name: "Tom, now the owner" };
    await makeAccount(fresh, { ...me, passwordHash: "new hash", now: second(0) });
    await restoreArchive(fresh, archive);
    const people = await fresh.db.selectFrom("user").select(["id", "name", "role"]).orderBy("id").execute();
    expect(people).toEqual([
      { id: "new-id", name: "Tom, now the owner", role: "owner" },
      { id: "olga", name: "Invented olga", role: "owner" },
    ]);
    const owners = await fresh.db.selectFrom("cases").select(["id", "owner_id"]).orderBy("id").execute();
    expect(owners.find(({ id }) => id === "c1")).toEqual({ id: "c1", owner_id: "new-id" });
    const hashes = await fresh.db.selectFrom("account").select("password").orderBy("password").execute();
    expect(hashes.map(({ password }) => password)).toEqual(["hash of olga", "new hash"]);
  });

  it("that are damaged anywhere are refused whole, or harmless", async () => {
    const old = await databases.open();
    await fill(old);
    const archive = await archiveOf(old);
    const wanted = await contents(old);
    const store = await databases.open();
    let refused = 0;
    await fc.assert(
      fc.asyncProperty(fc.nat(archive.length - 1), fc.integer({ min: 1, max: 255 }), async (at, by) => {
        const damaged = archive.slice();
        damaged[at] = (damaged[at] ?? 0) ^ by;
        try {
          await restoreArchive(store, damaged);
        } catch (error) {
          expect(error).toMatchObject(BAD);
          expect(await contents(store)).toEqual(EMPTY);
          refused += 1;
          return;
        }
        // Times and flags of the zip file itself carry nothing.
        expect(await contents(store)).toEqual(wanted);
        for (const table of [
          "attempt_entries",
          "attempts",
          "hand_outs",
          "exercises",
          "entries",
          "photos",
          "cases",
          "links",
          "account",
          "user",
        ] as const) {
          await store.db.deleteFrom(table).execute();
        }
      }),
      { seed: 20261128, numRuns: 150 },
    );
    expect(refused).toBeGreaterThan(75);
    for (const length of [0, 1, 30, archive.length >> 1, archive.length - 1]) {
      await expect(restoreArchive(store, archive.slice(0, length))).rejects.toMatchObject(BAD);
    }
    expect(await contents(store)).toEqual(EMPTY);
  });

  it("that say one thing and hold another are refused, saying what", async () => {
    const old = await databases.open();
    await fill(old);
    const archive = await archiveOf(old);
    const store = await databases.open();
    const manifest = textOf(archive, "manifest.json");
    const name = "cases/00001.jsonl";
    const lines = textOf(archive, name);
    /** With the manifest put right for the changed file: whoever makes such a file can do that too. */
    const forged = (text: string): Uint8Array => {
      const json = JSON.parse(manifest) as { files: { name: string; sha256: string; bytes: number }[] };
      for (const file of json.files.filter((one) => one.name === name)) {
        file.sha256 = createHash("sha256").update(text).digest("hex");
      }
      return changed(archive, { [name]: text, "manifest.json": JSON.stringify(json) });
    };
    const [first = "", second = ""] = lines.split("\n");
    const tries: [RegExp, Uint8Array][] = [
      [/no zip file/, strToU8("These are words. ".repeat(100))],
      [/manifest.json is missing/, changed(archive, { "manifest.json": undefined })],
      [
        /form 3.*Update/,
        changed(archive, { "manifest.json": manifest.replace('"schemaVersion": 2', '"schemaVersion": 3') }),
      ],
      [/format/, changed(archive, { "manifest.json": manifest.replace("cornerwise-archive", "other") })],
      [/manifest.json is not JSON/, changed(archive, { "manifest.json": `${manifest}}` })],
      [/does not list extra.txt/, changed(archive, { "extra.txt": "extra" })],
      [/links.json is missing/, changed(archive, { "links.json": undefined })],
      [/cases\/00001.jsonl is damaged/, changed(archive, { [name]: lines.replace("late", "soon") })],
      [/line 1: .*ownerId/, forged(lines.replace('"ownerId":null', '"ownerId":7'))],
      [/line 1 is not JSON/, forged(`{${lines}`)],
      [/entry 1 of case C-2 .*text/, forged(lines.replace('"text":"note late"', '"text":7'))],
      [/belongs to case c1/, forged(lines.replace('"caseId":"C-2"', '"caseId":"c1"'))],
      [/case C-2 is in it twice/, forged(`${lines}${first}\n`)],
      [/an entry twice/, forged(lines.replace('"id":"late"', '"id":"p"'))],
      [/another number of entries/, forged(lines.replace('"version":3', '"version":4'))],
      [/no opening/, forged(lines.replaceAll('"kind":"opened"', '"kind":"opening"'))],
      [/says 3 cases, it holds 2/, forged(`${first}\n${second}\n`)],
      [
        /nests deeper/,
        forged(
          lines.replace('"kind":"hologram', `"deep":${"[".repeat(20)}${"]".repeat(20)},"kind":"hologram`),
        ),
      ],
    ];
    for (const [words, bytes] of tries) {
      await expect(restoreArchive(store, bytes), String(words)).rejects.toMatchObject({
        name: "StoreProblem",
        message: expect.stringMatching(words),
      });
      expect(await contents(store), String(words)).toEqual(EMPTY);
    }
    await restoreArchive(
      store,
      forged(lines.replace('"ownerId":null', '"__proto__":{"polluted":1},"ownerId":null')),
    );
    expect(({} as { polluted?: number }).polluted).toBeUndefined();
  });

  it("bring every exercise and hand-out, however many pages they are read in", async () => {
    const old = await databases.open();
    // Two pages of twenty are full, so that the last page read is an empty one.
    for (let n = 10; n < 50; n++) await handOut(old, `e${n}`, null);
    const fresh = await databases.open();
    expect(await restoreArchive(fresh, await archiveOf(old))).toMatchObject({ exercises: 40, handOuts: 40 });
    expect(await contents(fresh)).toEqual(await contents(old));
  });

  it("of the form without exercises are taken in as they were", async () => {
    const old = await databases.open();
    await send(old, "c1", [opening("c1")]);
    const archive = await archiveOf(old);
    const manifest = JSON.parse(textOf(archive, "manifest.json")) as Record<string, unknown>;
    for (const later of ["photos", "exercises", "handOuts", "attempts"]) delete manifest[later];
    const first = changed(archive, { "manifest.json": JSON.stringify({ ...manifest, schemaVersion: 1 }) });
    const fresh = await databases.open();
    expect(await restoreArchive(fresh, first)).toMatchObject({ cases: 1, exercises: 0 });
  });

  it("that would unpack to more than a server can hold are refused before they do", async () => {
    const store = await databases.open();
    const bomb = zipSync({ "manifest.json": new Uint8Array(65_000_000) }, { level: 9 });
    expect(bomb.length).toBeLessThan(100_000);
    await expect(restoreArchive(store, bomb)).rejects.toMatchObject({
      ...BAD,
      message: expect.stringMatching(/manifest.json unpacks to 65000000 bytes/),
    });
    // The same, but it says that it is small: no more is unpacked than it says.
    const liar = bomb.slice();
    const view = new DataView(liar.buffer);
    const directory = view.getUint32(liar.length - 22 + 16, true);
    view.setUint32(directory + 24, 100, true);
    await expect(restoreArchive(store, liar)).rejects.toMatchObject(BAD);
    const names = Array.from({ length: 20_001 }, (_, i) => [`cases/${i}`, new Uint8Array()] as const);
    await expect(restoreArchive(store, zipSync(Object.fromEntries(names)))).rejects.toMatchObject({
      ...BAD,
      message: expect.stringMatching(/more than 20000 files/),
    });
  });
});
