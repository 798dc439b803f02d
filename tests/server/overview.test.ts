import { Kysely, sql } from "kysely";
import { beforeAll, expect, it } from "vitest";
import type { Urgency } from "../../lib/case/case-urgency.ts";
import {
  appendEntries,
  casesToReckon,
  listCases,
  type ListRequest,
  openStore,
  reckonCases,
  type Store,
} from "../../lib/store/index.ts";
import { embeddedDialect } from "../../lib/store/embedded.ts";
import { migrate } from "../../lib/store/migrate.ts";
import { MIGRATIONS } from "../../lib/store/migrations/index.ts";
import { postgresDialect } from "../../lib/store/postgres.ts";
import type { Tables } from "../../lib/store/tables.ts";
import { seededUniform } from "../support/random-models.ts";
import { made, opening, second } from "../support/made-entries.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";
import { forEachStore } from "../support/stores.ts";
import { call, desk, jsonOf, type Person, routeOf, signedIn } from "./desk.ts";

const levels = shippedKnowledge().advice?.levels ?? [];
const level = (id: string, danger = 1): Urgency => ({ is: "level", level: id, danger });

/** A case that was opened at that second and changed later. */
async function keep(store: Store, id: string, openedAt: number, changedAt: number, fields = {}) {
  const entries = [{ ...opening(id, fields), at: second(openedAt) }];
  const request = { caseId: id, entries, accountId: null, ownerId: null, now: second(changedAt) };
  await appendEntries(store, request);
}

const add = (store: Store, caseId: string, id: string, body: Record<string, unknown>, now: number) =>
  appendEntries(store, {
    caseId,
    entries: [made(caseId, id, second(now), body)],
    accountId: null,
    ownerId: null,
    now: second(now),
  });

const urgencyIs = (store: Store, id: string, urgency: Urgency) =>
  reckonCases(store, [id], { levels, urgency: () => urgency });

const CASES: readonly (readonly [id: string, openedAt: number, changedAt: number, Urgency | "failed"])[] = [
  ["careful-new", 40, 41, level("careful")],
  ["careful-old", 10, 50, level("careful")],
  ["nothing", 1, 60, { is: "nothing-told" }],
  ["recover", 45, 46, level("recover", 3)],
  ["hold", 44, 47, level("hold")],
  ["failed", 30, 31, "failed"],
  ["closed", 2, 70, level("recover")],
];

forEachStore("the overview of cases", (databases) => {
  let store: Store;
  beforeAll(async () => {
    store = await databases.open();
    for (const [id, openedAt, changedAt, urgency] of CASES) {
      await keep(store, id, openedAt, changedAt, { invented: id.startsWith("careful") });
      if (urgency !== "failed") await urgencyIs(store, id, urgency);
    }
    await add(store, "closed", "v", { kind: "verdict", suspects: [], proof: [] }, 70);
    await add(store, "hold", "w", { kind: "assigned", to: "Ana", account: "ana" }, 47);
    await add(store, "recover", "w", { kind: "assigned", to: "Ben" }, 46);
    await add(store, "nothing", "w", { kind: "assigned", to: "Ana", account: "ana" }, 60);
    await add(store, "nothing", "w2", { kind: "assigned" }, 60);
  });

  const ids = async (request: Partial<ListRequest>): Promise<string[]> =>
    (await listCases(store, { limit: 20, ...request })).cases.map(({ id }) => id);

  it("goes by urgency, what is not known behind the gravest, then by age; closed cases come last", async () => {
    expect(await ids({ order: "urgent" })).toEqual([
      "recover",
      "failed",
      "hold",
      "careful-old",
      "careful-new",
      "nothing",
      "closed",
    ]);
    expect((await ids({ order: "oldest" })).slice(0, 3)).toEqual(["nothing", "careful-old", "failed"]);
    expect((await ids({ order: "changed" })).slice(0, 3)).toEqual(["closed", "nothing", "careful-old"]);
  });

  it("narrows to levels, of open cases only", async () => {
    expect(await ids({ order: "urgent", levels: ["recover", "careful"] })).toEqual([
      "recover",
      "careful-old",
      "careful-new",
    ]);
    expect(await ids({ order: "urgent", levels: ["unknown", "nothing-told"] })).toEqual([
      "failed",
      "nothing",
    ]);
    expect(await ids({ levels: ["no-such-level"] })).toEqual([]);
  });

  it("narrows to who has a case, by the last word on it", async () => {
    expect(await ids({ who: { account: "ana" } })).toEqual(["hold"]);
    expect(await ids({ who: { name: "Ben" } })).toEqual(["recover"]);
    expect((await ids({ who: "nobody", closed: false })).sort()).toEqual([
      "careful-new",
      "careful-old",
      "failed",
      "nothing",
    ]);
    const [head] = (await listCases(store, { limit: 1, who: { account: "ana" } })).cases;
    expect(head?.assigned).toEqual({ name: "Ana", account: "ana" });
  });

  it("narrows to invented cases or leaves them out, together with everything else", async () => {
    expect((await ids({ invented: true })).sort()).toEqual(["careful-new", "careful-old"]);
    expect(await ids({ invented: false, order: "urgent", levels: ["careful", "hold"] })).toEqual(["hold"]);
    expect(await ids({ text: "hatchback", order: "urgent", who: { account: "ana" } })).toEqual(["hold"]);
  });

  it("refuses a place of another order", async () => {
    const { next } = await listCases(store, { limit: 1, order: "urgent" });
    for (const order of ["changed", "oldest"] as const) {
      await expect(listCases(store, { limit: 1, order, after: next ?? "" })).rejects.toMatchObject({
        code: "bad-cursor",
      });
    }
  });

  it("shows every case that stays in its place once, while others move, come and close between pages", async () => {
    const busy = await databases.open();
    const uniform = seededUniform(7);
    const pick = <T>(list: readonly T[]): T => list[Math.floor(uniform() * list.length)] as T;
    const grades = ["recover", "hold", "careful"];
    const names = Array.from({ length: 90 }, (_, n) => `c${n}`);
    for (const [n, id] of names.entries()) {
      await keep(busy, id, n % 20, n);
      await urgencyIs(busy, id, level(pick(grades)));
    }
    const order = "urgent";
    const { cases: before } = await listCases(busy, { limit: 200, order, closed: false });
    const moved = new Set<string>();
    const seen: string[] = [];
    let next: string | null | undefined;
    for (let page = 0; next !== null; page++) {
      const answer = await listCases(busy, {
        limit: 7,
        order,
        closed: false,
        ...(next !== undefined && { after: next }),
      });
      seen.push(...answer.cases.map(({ id }) => id));
      next = answer.next;
      const id = pick(names);
      moved.add(id);
      if (page % 3 === 0) await add(busy, id, `v${page}`, { kind: "verdict", suspects: [], proof: [] }, 200);
      else {
        await add(busy, id, `a${page}`, { kind: "car-changed", car: { drive: "rear" } }, 200);
        await urgencyIs(busy, id, level(pick(grades)));
      }
      await keep(busy, `new${page}`, 30, 300 + page);
    }
    const stayed = before.map(({ id }) => id).filter((id) => !moved.has(id));
    expect(stayed.length).toBeGreaterThan(60);
    expect(seen.filter((id) => stayed.includes(id))).toEqual(stayed);
  });

  it("takes in an older database: its cases wait to be reckoned and belong to nobody", async () => {
    const database = await databases.fresh();
    const dialect = databases.kind === "postgres" ? postgresDialect(database) : embeddedDialect(database);
    const old = new Kysely<Tables>({ dialect });
    const steps = Object.fromEntries(Object.entries(MIGRATIONS).filter(([name]) => name < "008"));
    await migrate(old, databases.kind, steps);
    const row = (id: string, closed: number, removed: string | null) =>
      sql`insert into cases (id, owner_id, opened_at, changed_at, version, characters, customer, vehicle, plate, search, invented, closed, removed_at)
        values (${id}, null, ${second(1)}, ${second(2)}, 3, 900, 'Invented', 'van', null, 'invented van', 0, ${closed}, ${removed})`.execute(
        old,
      );
    await row("open", 0, null);
    await row("closed", 1, null);
    await row("gone", 0, second(3));
    await old.destroy();
    const store = await openStore({ database });
    expect(await casesToReckon(store, { from: "oldest", limit: 10 })).toEqual(["open"]);
    const { cases } = await listCases(store, { limit: 10, order: "urgent", who: "nobody" });
    expect(cases.map(({ id, urgency }) => [id, urgency.is, urgency.current])).toEqual([
      ["open", "unknown", false],
      ["closed", "unknown", false],
    ]);
    await store.close();
  });
});

const LIST = routeOf("GET", "/cases");
const PEOPLE = routeOf("GET", "/people");

forEachStore("the overview over the network", (databases) => {
  const held = desk(databases);
  const people: Record<string, Person> = {};
  beforeAll(async () => {
    for (const role of ["owner", "technician", "instructor", "trainee"] as const) {
      people[role] = await signedIn(held.store, role, role);
    }
    for (const [id, owner, account] of [
      ["t-own", "technician", "technician"],
      ["learner", "trainee", "technician"],
      ["other", "owner", "trainee"],
    ] as const) {
      await appendEntries(held.store, {
        caseId: id,
        entries: [
          opening(id),
          made(id, "w", second(1), { kind: "assigned", to: `Invented ${account}`, account }),
        ],
        accountId: owner,
        ownerId: owner,
        now: second(1),
      });
    }
  });

  const seen = async (who: string, query: string): Promise<string[]> => {
    const as = people[who]?.cookie ?? "";
    const { cases } = await jsonOf<{ cases: { id: string }[] }>(call(LIST, { as, query }));
    return cases.map(({ id }) => id).sort();
  };

  it("means the asker by `me`, and shows nobody more than is theirs to see", async () => {
    expect(await seen("technician", "?who=me&order=urgent")).toEqual(["learner", "t-own"]);
    expect(await seen("technician", "?who=account:trainee")).toEqual(["other"]);
    expect(await seen("instructor", "?order=urgent")).toEqual(["learner"]);
    expect(await seen("instructor", "?who=account:technician")).toEqual(["learner"]);
    // Somebody else's case is not theirs to see, whoever it was given to.
    expect(await seen("trainee", "?who=me")).toEqual([]);
    expect(await seen("trainee", "?who=account:technician&order=oldest")).toEqual(["learner"]);
  });

  it.each(["who=", "who=somebody", "urgency=A", "urgency=a,,b", "order=best", "invented=2", "who=name:"])(
    "refuses %s, saying which field",
    async (query) => {
      const response = await call(LIST, { as: people.owner?.cookie ?? "", query: `?${query}` });
      expect(response.status).toBe(422);
      expect(JSON.stringify(await response.json())).toContain(query.split("=")[0]);
    },
  );

  it("names whom a case can be given to, without addresses", async () => {
    const list = await jsonOf<{ people: unknown[] }>(call(PEOPLE, { as: people.technician?.cookie ?? "" }));
    expect(list.people).toContainEqual({ id: "owner", name: "owner", role: "owner" });
    expect(JSON.stringify(list)).not.toContain("@");
  });
});
