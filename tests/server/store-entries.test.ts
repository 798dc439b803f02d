import { beforeAll, expect, it } from "vitest";
import { type Entry, exportCase, foldCase, importCase } from "../../lib/case/index.ts";
import {
  type Appended,
  appendEntries,
  caseHead,
  caseVersions,
  entriesAfter,
  removeCase,
  type Store,
} from "../../lib/store/index.ts";
import { made, note, opening, second } from "../support/made-entries.ts";
import { forEachStore } from "../support/stores.ts";

const NOW = "2026-03-01T10:00:00.000Z";

forEachStore("entries in the store", (databases) => {
  let store: Store;
  beforeAll(async () => {
    store = await databases.open();
  });

  const append = (caseId: string, entries: readonly Entry[]): Promise<Appended> =>
    appendEntries(store, { caseId, entries, accountId: null, ownerId: null, now: NOW });
  const all = async (caseId: string): Promise<Entry[]> =>
    (await entriesAfter(store, caseId, 0, 100_000)).entries.map(({ entry }) => entry);

  it("are given back as they came, numbered from 1 without gaps", async () => {
    const sent = [
      opening("back"),
      note("back", "b", 'umlaut ä, "quotes", line\nbreak, 🚗, NUL \u0000.'),
      note("back", "a"),
    ];
    expect(await append("back", sent)).toEqual({ version: 3, added: sent.map((e) => e.id), known: [] });
    const page = await entriesAfter(store, "back", 0, 10);
    expect(page).toEqual({ version: 3, entries: sent.map((entry, i) => ({ seq: i + 1, entry })) });
    expect((await entriesAfter(store, "back", 1, 1)).entries).toEqual([{ seq: 2, entry: sent[1] }]);
    expect((await entriesAfter(store, "back", 3, 10)).entries).toEqual([]);
  });

  it("may be sent again, alone or among new ones, and in another order of their fields", async () => {
    const first = note("again", "n1");
    await append("again", [opening("again"), first]);
    const turned = Object.fromEntries(Object.entries(first).reverse()) as unknown as Entry;
    expect(await append("again", [turned, note("again", "n2"), note("again", "n2")])).toEqual({
      version: 3,
      added: ["n2"],
      known: ["n1"],
    });
    expect(await append("again", [first])).toEqual({ version: 3, added: [], known: ["n1"] });
    expect((await all("again")).map((e) => e.id)).toEqual(["again-opened", "n1", "n2"]);
  });

  it("of two who make one case at once, each taking it for new, are one's", async () => {
    const of = (owner: string): Promise<Appended> =>
      appendEntries(store, {
        caseId: "claimed",
        entries: [opening("claimed"), note("claimed", owner)],
        accountId: owner,
        ownerId: owner,
        asNew: true,
        now: NOW,
      });
    const tries = await Promise.allSettled(["ana", "ben"].map(of));
    const refused = tries.flatMap((one) => (one.status === "rejected" ? [one.reason] : []));
    expect(refused).toMatchObject([{ code: "no-such-case" }]);
    const owner = (await caseHead(store, "claimed"))?.ownerId ?? "";
    expect((await all("claimed")).map(({ id }) => id)).toEqual(["claimed-opened", owner]);
    expect(await of(owner)).toMatchObject({ added: [], version: 2 });
  });

  it("are refused under an id that holds another entry, and the whole delivery with them", async () => {
    await append("differs", [opening("differs"), note("differs", "n1")]);
    const delivery = [note("differs", "n2"), note("differs", "n1", "other words")];
    await expect(append("differs", delivery)).rejects.toMatchObject({
      code: "entry-differs",
      details: { id: "n1" },
    });
    await expect(
      append("differs", [note("differs", "n3", "one"), note("differs", "n3", "two")]),
    ).rejects.toMatchObject({ code: "entry-differs" });
    expect(await all("differs")).toHaveLength(2);
    expect((await caseHead(store, "differs"))?.version).toBe(2);
  });

  it("need the opening first; without it no trace of the case is left", async () => {
    await expect(append("unopened", [note("unopened", "n1")])).rejects.toMatchObject({
      code: "no-such-case",
    });
    expect(await caseHead(store, "unopened")).toBeUndefined();
    await expect(entriesAfter(store, "unopened", 0, 10)).rejects.toMatchObject({ code: "no-such-case" });
  });

  it("of another case are refused", async () => {
    const delivery = [opening("own"), note("stranger", "n1")];
    await expect(append("own", delivery)).rejects.toMatchObject({ code: "bad-entry", details: { id: "n1" } });
    expect(await caseHead(store, "own")).toBeUndefined();
  });

  it("under the same id in two cases do not meet", async () => {
    await append("one", [opening("one"), note("one", "same", "in one")]);
    await append("two", [opening("two"), note("two", "same", "in two")]);
    expect((await all("one"))[1]).toMatchObject({ text: "in one" });
    expect((await all("two"))[1]).toMatchObject({ text: "in two" });
  });

  it("of a kind of a newer version are kept as they are", async () => {
    const photo = made("newer", "p1", second(3), {
      kind: "hologram\u0000",
      picture: { deep: [1, 2, { three: 3 }] },
    });
    await append("newer", [opening("newer"), photo]);
    expect(await all("newer")).toEqual([opening("newer"), photo]);
  });

  it("nest no deeper than a case file may, and a key that names the prototype is dropped", async () => {
    const nested = (levels: number): unknown => JSON.parse("[".repeat(levels) + "]".repeat(levels));
    const deep = (id: string, levels: number): Entry =>
      made("deep", id, second(1), { kind: "hologram", picture: nested(levels) });
    await append("deep", [opening("deep"), deep("fits", 13)]);
    expect(importCase(exportCase(await all("deep"))).entries).toHaveLength(2);
    for (const levels of [14, 9000]) {
      await expect(append("deep", [deep("deeper", levels)])).rejects.toMatchObject({ code: "bad-entry" });
    }
    const evil = JSON.parse(
      `{"id":"evil","caseId":"deep","at":"${second(1)}","by":"x","kind":"hologram","__proto__":{"a":1}}`,
    ) as Entry;
    await append("deep", [evil]);
    const kept = (await all("deep")).find((entry) => entry.id === "evil");
    expect(kept && Object.keys(kept)).toEqual(["at", "by", "caseId", "id", "kind"]);
  });

  it("stop at what a case file can hold, so that no case grows too large to be saved", async () => {
    const many = (from: number, to: number): Entry[] =>
      Array.from({ length: to - from }, (_, i) => note("many", `n${from + i}`, "x"));
    await append("many", [opening("many"), ...many(0, 9999)]);
    await expect(append("many", many(9999, 10_000))).rejects.toMatchObject({ code: "case-full" });
    expect((await caseHead(store, "many"))?.version).toBe(10_000);
    // Newlines and quotes take two characters each in a file; the limit is on the file.
    const long = (from: number): Entry[] =>
      Array.from({ length: 25 }, (_, i) => note("long", `n${from + i}`, '"\n'.repeat(2000)));
    await append("long", [opening("long")]);
    let kept = 0;
    const fill = async (): Promise<void> => {
      for (; kept < 1000; kept += 25) await append("long", long(kept));
    };
    await expect(fill()).rejects.toMatchObject({ code: "case-full" });
    expect(kept).toBeGreaterThan(500);
    const file = exportCase(await all("long"));
    expect(file.length).toBeLessThanOrEqual(5_000_000);
    expect(importCase(file).entries).toHaveLength(kept + 1);
  });

  it("change what the list shows: customer, vehicle, plate, verdict and what takes it back", async () => {
    const first = opening("head", { customer: "Ana\u0000 Example", plate: "AB 12 CDE", invented: true });
    const verdict = { kind: "verdict", suspects: ["joint-worn@front-left"], proof: [] };
    const head = () => caseHead(store, "head");
    await append("head", [note("head", "n0", "came first", second(1)), first]);
    expect(await head()).toEqual({
      id: "head",
      ownerId: null,
      version: 2,
      openedAt: second(0),
      changedAt: NOW,
      customer: "Ana  Example",
      vehicle: "invented hatchback",
      plate: "AB 12 CDE",
      invented: true,
      closed: false,
      removedAt: null,
      assigned: null,
      urgency: { is: "unknown", level: null, danger: null, current: false, problem: null },
    });
    await append("head", [made("head", "v", second(5), verdict)]);
    expect(await head()).toMatchObject({ closed: true });
    await append("head", [made("head", "r", second(6), { kind: "retracted", entry: "v" })]);
    expect(await head()).toMatchObject({ closed: false });
    await append("head", [made("head", "rr", second(7), { kind: "retracted", entry: "r" })]);
    expect(await head()).toMatchObject({ closed: true });
    await append("head", [made("head", "late", second(4), { kind: "reopened" })]);
    expect(await head()).toMatchObject({ closed: true });
    await append("head", [made("head", "o", second(8), { kind: "reopened" })]);
    expect(await head()).toMatchObject({ closed: false });
    expect(foldCase(await all("head")).verdict).toBeUndefined();
  });

  it("added by many at once are all there, once, without a gap", async () => {
    const other = await databases.reopen(await databases.fresh());
    const writers = Array.from({ length: 8 }, (_, w) =>
      Array.from({ length: 10 }, (_, i) => note("rush", `w${w}-${i}`)),
    );
    const send = (entries: readonly Entry[]): Promise<Appended> =>
      appendEntries(other, { caseId: "rush", entries, accountId: null, ownerId: null, now: NOW });
    await Promise.all(
      writers.map(async (notes) => {
        for (const one of notes) await send([opening("rush"), one]);
      }),
    );
    const { version, entries } = await entriesAfter(other, "rush", 0, 1000);
    expect(version).toBe(81);
    expect(entries.map(({ seq }) => seq)).toEqual(Array.from({ length: 81 }, (_, i) => i + 1));
    expect(new Set(entries.map(({ entry }) => entry.id)).size).toBe(81);
  });

  it("of a removed case are gone for good, and no device brings them back", async () => {
    await append("gone", [opening("gone", { plate: "GONE 1" }), note("gone", "n1", "very private")]);
    await removeCase(store, "gone", second(90));
    expect(await caseHead(store, "gone")).toMatchObject({
      customer: "",
      vehicle: "",
      plate: null,
      removedAt: second(90),
    });
    const left = await store.db.selectFrom("entries").select("id").where("case_id", "=", "gone").execute();
    expect(left).toEqual([]);
    await expect(append("gone", [opening("gone")])).rejects.toMatchObject({ code: "case-removed" });
    await expect(entriesAfter(store, "gone", 0, 10)).rejects.toMatchObject({ code: "case-removed" });
    await expect(removeCase(store, "gone", NOW)).rejects.toMatchObject({ code: "case-removed" });
    await expect(removeCase(store, "never", NOW)).rejects.toMatchObject({ code: "no-such-case" });
  });

  it("show in the versions that others listen for", async () => {
    await append("heard", [opening("heard")]);
    expect(await caseVersions(store, ["heard", "gone", "never"])).toEqual(new Map([["heard", 1]]));
    await append("heard", [note("heard", "n1"), note("heard", "n2")]);
    expect(await caseVersions(store, ["heard"])).toEqual(new Map([["heard", 3]]));
    expect(await caseVersions(store, [])).toEqual(new Map());
  });
});
