import { beforeAll, expect, it } from "vitest";
import {
  appendEntries,
  linkById,
  listCases,
  listLinks,
  type ListRequest,
  makeLink,
  openLink,
  readSetting,
  removeCase,
  removeSetting,
  revokeLink,
  settingOnce,
  type Store,
  writeSetting,
} from "../../lib/store/index.ts";
import { made, opening, second } from "../support/made-entries.ts";
import { forEachStore } from "../support/stores.ts";

const CASES = [
  { id: "c1", owner: null, customer: "Zoë Exämple", vehicle: "invented van", plate: "AB 12 CDE", at: 1 },
  {
    id: "c2",
    owner: "tom",
    customer: "Invented 100% Ltd",
    vehicle: "invented_coupe",
    plate: undefined,
    at: 2,
  },
  { id: "C3", owner: "tim", customer: "Zoe Other", vehicle: "invented hatchback", plate: "XY-99", at: 3 },
  { id: "c-4", owner: "tom", customer: "Last", vehicle: "back\\slash", plate: undefined, at: 3 },
  { id: "c5", owner: "tom", customer: "Removed", vehicle: "removed van", plate: undefined, at: 4 },
];

forEachStore("lists of the store", (databases) => {
  let store: Store;
  beforeAll(async () => {
    store = await databases.open();
    for (const { id, owner, customer, vehicle, plate, at } of CASES) {
      const entries = [opening(id, { customer, vehicle, ...(plate !== undefined && { plate }) })];
      await appendEntries(store, { caseId: id, entries, accountId: owner, ownerId: owner, now: second(at) });
    }
    const verdict = made("C3", "v", second(5), { kind: "verdict", suspects: [], proof: [] });
    await appendEntries(store, {
      caseId: "C3",
      entries: [verdict],
      accountId: null,
      ownerId: null,
      now: second(3),
    });
    await removeCase(store, "c5", second(9));
  });

  const ids = async (request: Partial<ListRequest>): Promise<string[]> =>
    (await listCases(store, { limit: 10, ...request })).cases.map(({ id }) => id);

  it("show cases by their last change, those of one moment by their id, alike in both databases", async () => {
    expect(await ids({})).toEqual(["c-4", "C3", "c2", "c1"]);
  });

  it("come in pages that leave nothing out and repeat nothing", async () => {
    const seen: string[] = [];
    let next: string | null | undefined;
    for (let pages = 0; next !== null; pages++) {
      expect(pages).toBeLessThan(4);
      const page = await listCases(store, { limit: 1, ...(next !== undefined && { after: next }) });
      seen.push(...page.cases.map(({ id }) => id));
      next = page.next;
    }
    expect(seen).toEqual(["c-4", "C3", "c2", "c1"]);
  });

  it("narrow to owners and to open or closed ones", async () => {
    expect(await ids({ ownerIds: ["tom"] })).toEqual(["c-4", "c2"]);
    expect(await ids({ ownerIds: ["tom", "tim"], closed: false })).toEqual(["c-4", "c2"]);
    expect(await ids({ ownerIds: [] })).toEqual([]);
    expect(await ids({ closed: true })).toEqual(["C3"]);
  });

  it.each([
    ["zoe", ["C3", "c1"]],
    ["ZOE EXAMPLE", ["c1"]],
    ["ab12cde", ["c1"]],
    ["12 cde", ["c1"]],
    ["xy99", ["C3"]],
    ["100%", ["c2"]],
    ["%", ["c2"]],
    ["_", ["c2"]],
    ["\\", ["c-4"]],
    ["'; drop table cases; --", []],
    ["removed", []],
    ["  ", ["c-4", "C3", "c2", "c1"]],
  ])("find by words: %s", async (text, found) => {
    expect(await ids({ text })).toEqual(found);
  });

  it.each(["", "x", "bm90IG9uZQ", "WzEsMl0", "e30"])("refuse a place that is none: %s", async (after) => {
    await expect(listCases(store, { limit: 1, after })).rejects.toMatchObject({ code: "bad-cursor" });
  });

  it("keep links that open one thing until they end or are revoked, without their tokens", async () => {
    const link = (id: string, days: number) => ({
      id,
      token: `token-${id}`,
      kind: "read",
      target: "c1",
      madeBy: null,
      madeAt: second(days),
      expiresAt: `2026-03-${10 + days}T00:00:00.000Z`,
    });
    await makeLink(store, link("l1", 1));
    await makeLink(store, link("l2", 2));
    const { token, ...shown } = link("l2", 2);
    expect(await openLink(store, token, second(5))).toEqual({
      ...{ ...shown, revokedAt: null },
      // A link for a customer's form fills these.
      ...{ words: null, openedAt: null, doneAt: null },
    });
    expect(await openLink(store, "token-l1", "2026-03-11T00:00:00.000Z")).toBeUndefined();
    expect(await openLink(store, "token-l1", "2026-03-10T23:59:59.999Z")).toMatchObject({ id: "l1" });
    expect(await openLink(store, "l1", second(5))).toBeUndefined();
    expect((await listLinks(store, "c1")).map(({ id }) => id)).toEqual(["l2", "l1"]);
    expect(await revokeLink(store, "l2", second(6))).toBe(true);
    expect(await revokeLink(store, "l2", second(7))).toBe(false);
    expect(await openLink(store, token, second(8))).toBeUndefined();
    expect(await linkById(store, "l2")).toMatchObject({ revokedAt: second(6) });
    const rows = await store.db.selectFrom("links").selectAll().execute();
    expect(JSON.stringify(rows)).not.toContain("token-l");
  });

  it("end with the case that they open", async () => {
    const at = { madeBy: null, madeAt: second(1), expiresAt: "2027-01-01T00:00:00.000Z" };
    const caseId = "linked";
    const entries = [opening(caseId)];
    await appendEntries(store, { caseId, entries, accountId: null, ownerId: null, now: second(1) });
    await makeLink(store, { id: "l9", token: "t9", kind: "read", target: caseId, ...at });
    await removeCase(store, caseId, second(2));
    expect(await openLink(store, "t9", second(3))).toBeUndefined();
  });

  it("keep a setting that several set at once as one and the same", async () => {
    const [a, b] = await Promise.all([settingOnce(store, "k", "1"), settingOnce(store, "k", "2")]);
    expect(a).toBe(b);
    await writeSetting(store, "k", "3");
    expect(await settingOnce(store, "k", "4")).toBe("3");
    await removeSetting(store, "k");
    expect(await readSetting(store, "k")).toBeUndefined();
  });
});
