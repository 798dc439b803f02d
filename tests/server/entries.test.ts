import { beforeAll, expect, it } from "vitest";
import { LONGEST_ENTRY } from "../../lib/case/entries.ts";
import { foldCase, importCase } from "../../lib/case/index.ts";
import { caseHead, type Store } from "../../lib/store/index.ts";
import { made, note, opening, second } from "../support/made-entries.ts";
import { forEachStore } from "../support/stores.ts";
import { call, desk, jsonOf, type Person, routeOf, signedIn } from "./desk.ts";

const ADD = routeOf("POST", "/cases/{id}/entries");
const ENTRIES = routeOf("GET", "/cases/{id}/entries");
const HEAD = routeOf("GET", "/cases/{id}");
const LIST = routeOf("GET", "/cases");
const REMOVE = routeOf("DELETE", "/cases/{id}");

interface Added {
  readonly version: number;
  readonly added: readonly string[];
  readonly known: readonly string[];
}
interface ProblemBody {
  readonly type: string;
  readonly detail: string;
  readonly fields?: readonly { readonly path: string; readonly message: string }[];
}

/** In which order known ids are listed is not promised. */
async function sortedKnown(answer: Promise<Response>): Promise<Added> {
  const added = await jsonOf<Added>(answer);
  return { ...added, known: added.known.toSorted() };
}

forEachStore("entries of a case", (databases) => {
  const held = desk(databases);
  let ana: Person;
  beforeAll(async () => {
    ana = await signedIn(held.store, "ana", "technician");
  });
  const store = (): Store => held.store;
  const add = (id: string, entries: readonly unknown[]): Promise<Response> =>
    call(ADD, { as: ana.cookie, params: { id }, body: { entries } });
  const get = (id: string, query = "", headers: Record<string, string> = {}): Promise<Response> =>
    call(ENTRIES, { as: ana.cookie, params: { id }, query, headers });

  // Source: RFC 9110, 9.2.2: repeating an idempotent request has the effect of doing it once.
  it("may be sent again, in part or in another order, and are kept once", async () => {
    const [o, a, b] = [opening("twice"), note("twice", "a"), note("twice", "b")];
    expect(await jsonOf<Added>(add("twice", [o, a]))).toEqual({ version: 2, added: [o.id, "a"], known: [] });
    expect(await sortedKnown(add("twice", [o, a]))).toEqual({ version: 2, added: [], known: ["a", o.id] });
    expect(await jsonOf<Added>(add("twice", [b, a]))).toEqual({ version: 3, added: ["b"], known: ["a"] });
    const kept = await jsonOf<{ entries: { seq: number; entry: { id: string } }[] }>(get("twice"));
    expect(kept.entries.map(({ seq, entry }) => [seq, entry.id])).toEqual([
      [1, o.id],
      [2, "a"],
      [3, "b"],
    ]);
  });

  it("come out as they went in, also of kinds that this version does not know", async () => {
    const photo = made("same", "p", second(2), {
      kind: "hologram",
      size: { width: 3, of: ["a", null, true] },
    });
    const sent = [
      opening("same", { plate: "AB 12" }),
      note("same", "n", 'quotes " \\ \n and 🔧 \u0000'),
      photo,
    ];
    await add("same", sent);
    const { entries } = await jsonOf<{ entries: { entry: unknown }[] }>(get("same"));
    expect(entries.map(({ entry }) => entry)).toEqual(sent);
  });

  it("make a case of whoever sends them first, and keep it theirs", async () => {
    await add("theirs", [opening("theirs")]);
    expect((await caseHead(store(), "theirs"))?.ownerId).toBe("ana");
  });

  it.each<[string, unknown[], number, string, RegExp?]>([
    ["none", [], 422, "bad-input", /^entries$/],
    ["too many", Array.from({ length: 201 }, (_, i) => note("bad", `n${i}`)), 422, "bad-input", /^entries$/],
    ["no opening", [note("bad", "n")], 404, "no-such-case"],
    [
      "a wrong field",
      [opening("bad"), { ...note("bad", "n"), text: 7 }],
      422,
      "bad-input",
      /^entries\.1\.text$/,
    ],
    ["no kind", [opening("bad"), { id: "x" }], 422, "bad-input", /^entries\.1/],
    ["no object", [opening("bad"), null], 422, "bad-input", /^entries\.1/],
    ["another case's entry", [opening("bad"), note("other", "n")], 422, "bad-input"],
    ["a bad time", [opening("bad", { at: "2026-01-01" })], 422, "bad-input", /^entries\.0\.at$/],
    [
      "an entry that is too long",
      [opening("bad"), made("bad", "p", second(1), { kind: "hologram", data: "x".repeat(LONGEST_ENTRY) })],
      422,
      "bad-input",
      /^entries\.1$/,
    ],
    [
      "one id twice with two texts",
      [opening("bad"), note("bad", "n", "a"), note("bad", "n", "b")],
      409,
      "entry-differs",
    ],
  ])("are refused whole with %s", async (_what, entries, status, code, path) => {
    const response = await add("bad", entries);
    const body = await jsonOf<ProblemBody>(response);
    expect([response.status, body.type]).toEqual([status, `/problems/${code}`]);
    if (path !== undefined) expect(body.fields?.[0]?.path).toMatch(path);
    expect(await caseHead(store(), "bad")).toBeUndefined();
  });

  it("are never changed: the same id with another text is a conflict, and nothing of that request is kept", async () => {
    await add("fixed", [opening("fixed"), note("fixed", "n", "first")]);
    const response = await add("fixed", [note("fixed", "new"), note("fixed", "n", "second")]);
    expect(response.status).toBe(409);
    expect((await caseHead(store(), "fixed"))?.version).toBe(2);
  });

  it("are given page by page beyond the one that is known", async () => {
    const notes = Array.from({ length: 9 }, (_, i) => note("pages", `n${i}`));
    await add("pages", [opening("pages"), ...notes]);
    const seen: number[] = [];
    for (let after = 0, version = 1; after < version; ) {
      const page = await jsonOf<{ version: number; entries: { seq: number }[] }>(
        get("pages", `?after=${after}&limit=4`),
      );
      version = page.version;
      after = page.entries.at(-1)?.seq ?? version;
      seen.push(...page.entries.map(({ seq }) => seq));
    }
    expect(seen).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
  });

  it.each([
    "?after=-1",
    "?limit=0",
    "?limit=1001",
    "?after=1&after=2",
    "?after=x",
    "?other=1",
    "?after=1e3",
    "?limit=",
  ])("are not given for the query %s", async (query) => {
    expect((await get("pages", query)).status).toBe(422);
  });

  // Source: RFC 9110, 8.8.3 (ETag), 13.1.2 (If-None-Match, weak comparison), 15.4.5 (304 carries the ETag).
  it("carry the version as ETag, and are not sent to who has it", async () => {
    await add("tagged", [opening("tagged")]);
    const first = await get("tagged");
    expect(first.headers.get("etag")).toBe('"1"');
    for (const known of ['"1"', 'W/"1"', '"0", "1"', "*"]) {
      const again = await get("tagged", "", { "if-none-match": known });
      expect([again.status, again.headers.get("etag"), await again.text()]).toEqual([304, '"1"', ""]);
    }
    await add("tagged", [note("tagged", "n")]);
    expect((await get("tagged", "", { "if-none-match": '"1"' })).status).toBe(200);
  });

  it("fold to the head that the list shows", async () => {
    const verdict = made("headed", "v", second(3), { kind: "verdict", suspects: [], proof: [] });
    await add("headed", [opening("headed", { customer: "Zoë", plate: "XY 1" }), verdict]);
    const head = { id: "headed", customer: "Zoë", plate: "XY 1", closed: true, version: 2, ownerId: "ana" };
    expect(await jsonOf(call(HEAD, { as: ana.cookie, params: { id: "headed" } }))).toMatchObject(head);
    const list = await jsonOf<{ cases: unknown[] }>(
      call(LIST, { as: ana.cookie, query: "?text=zoe&closed=1" }),
    );
    expect(list.cases).toMatchObject([head]);
  });

  it("list page by page, each case once", async () => {
    const seen: string[] = [];
    for (let query = "?limit=3"; query !== ""; ) {
      const page = await jsonOf<{ cases: { id: string }[]; next: string | null }>(
        call(LIST, { as: ana.cookie, query }),
      );
      seen.push(...page.cases.map(({ id }) => id));
      query = page.next === null ? "" : `?limit=3&after=${encodeURIComponent(page.next)}`;
    }
    expect(seen.length).toBeGreaterThan(5);
    expect(new Set(seen).size).toBe(seen.length);
  });

  it("are taken out as a file that is read in again, and fold alike", async () => {
    const sent = [opening("filed"), note("filed", "n")];
    await add("filed", sent);
    const route = routeOf("GET", "/cases/{id}/file.json");
    const response = await call(route, { as: ana.cookie, params: { id: "filed" } });
    expect(response.headers.get("content-disposition")).toBe('attachment; filename="case-filed.json"');
    const { entries } = importCase(await response.text());
    expect(foldCase(entries)).toEqual(foldCase(sent));
  });

  // Source: RFC 6585, 3 (428); RFC 9110, 13.1.1 (If-Match, strong comparison), 15.5.13 (412), 15.5.11 (410).
  it("go when the case is removed by an owner who knows its version, and cannot come back", async () => {
    const owner = await signedIn(store(), "olga", "owner");
    await add("gone", [opening("gone"), note("gone", "n")]);
    const remove = (headers: Record<string, string>): Promise<Response> =>
      call(REMOVE, { as: owner.cookie, params: { id: "gone" }, headers });
    expect((await remove({})).status).toBe(428);
    for (const wrong of ['"1"', 'W/"2"', "2", '"two"', ""]) {
      expect((await remove({ "if-match": wrong })).status, wrong).toBe(412);
    }
    expect((await remove({ "if-match": '"1", "2"' })).status).toBe(204);
    expect((await add("gone", [opening("gone")])).status).toBe(410);
    expect((await get("gone")).status).toBe(410);
    expect((await remove({ "if-match": "*" })).status).toBe(410);
  });
});
