import { describe, expect, it } from "vitest";
import type { Ask, Reply } from "../../app/sync/door.ts";
import { syncStep } from "../../app/sync/sync-step.ts";
import { memoryOf, newMemory, type SyncMemory } from "../../app/sync/sync-tools.ts";
import type { Entry } from "../../lib/case/index.ts";
import { type MemoryDevice, memoryDevice } from "../support/memory-sync-store.ts";
import { modelServer, problem, reply } from "../support/model-server.ts";

const at = (s: number): string => new Date(Date.UTC(2026, 10, 28, 9, 0, s)).toISOString();
const opened = (caseId: string): Entry => ({
  id: `${caseId}-open`,
  caseId,
  at: at(0),
  by: "invented apprentice",
  kind: "opened",
  release: "1",
  car: {},
  customer: "Invented Customer",
  vehicle: "invented hatchback",
});
const note = (caseId: string, id: string, s: number, text = id): Entry => ({
  id,
  caseId,
  at: at(s),
  by: "invented apprentice",
  kind: "note",
  text,
});

interface Tab {
  readonly device: MemoryDevice;
  readonly memory: SyncMemory;
  readonly asks: Ask[];
  now: number;
  readonly answer: (ask: Ask) => Reply;
  readonly personId?: string | undefined;
}

function newTab(answer: Tab["answer"], device = memoryDevice(), personId?: string): Tab {
  return { device, memory: newMemory(), asks: [], now: 0, answer, personId };
}

/** Steps until rest or until it asks to wait; gives how it ended. */
async function work(tab: Tab): Promise<"rest" | number> {
  for (let steps = 0; steps < 200; steps++) {
    const after = await syncStep(
      {
        store: tab.device,
        door: {
          ask: (ask) => {
            tab.asks.push(ask);
            return Promise.resolve(tab.answer(ask));
          },
        },
        personId: tab.personId,
        now: () => tab.now,
        random: () => 0.5,
        onChange: () => undefined,
      },
      tab.memory,
    );
    if (after.go === "rest") return "rest";
    if (after.go === "later") return after.ms;
  }
  throw new Error("It never comes to rest.");
}

const sentIds = (tab: Tab): string[] =>
  tab.asks
    .filter((ask) => ask.method === "POST")
    .flatMap((ask) => (ask.body as { entries: Entry[] }).entries.map((entry) => entry.id));

describe("one step of sending and fetching", () => {
  it("sends the opening first, whatever the clock of the device says, and then nothing more", async () => {
    const server = modelServer();
    const tab = newTab(server.answer);
    tab.device.add(note("a", "early", -60), { ...opened("a"), at: at(5) });
    expect(await work(tab)).toBe("rest");
    expect(sentIds(tab)).toEqual(["a-open", "early"]);
    expect(tab.device.unsent.size).toBe(0);
    // Two questions in all: who we are, and the one batch; nothing is fetched that was just sent.
    expect(tab.asks.map((ask) => ask.method)).toEqual(["GET", "POST"]);
    expect(await work(tab)).toBe("rest");
    expect(tab.asks.length).toBe(2);
  });

  it("finds the one entry that is not taken, keeps it with the reason, and sends all others of all cases", async () => {
    const server = modelServer((entry) =>
      entry.id === "bad" ? { status: 422, code: "bad-entry" } : undefined,
    );
    const tab = newTab(server.answer);
    tab.device.add(opened("a"), ...Array.from({ length: 30 }, (_, k) => note("a", `n${k}`, k + 1)));
    tab.device.add(note("a", "bad", 12), opened("b"), note("b", "b1", 3));
    expect(await work(tab)).toBe("rest");
    expect(server.cases.get("a")?.length).toBe(31);
    expect(server.cases.get("b")?.length).toBe(2);
    expect([...tab.device.unsent.values()]).toEqual([
      { id: "bad", caseId: "a", refused: { code: "bad-entry", detail: "bad-entry" } },
    ]);
    expect(tab.device.kept.has("bad")).toBe(true);
  });

  it("holds an invented case back until it is freed", async () => {
    const server = modelServer();
    const tab = newTab(server.answer);
    tab.device.add(opened("a"));
    tab.device.unsent.set("a-open", { id: "a-open", caseId: "a", held: true });
    expect(await work(tab)).toBe("rest");
    expect(sentIds(tab)).toEqual([]);
    tab.device.add(opened("a"), note("a", "own", 4));
    expect(await work(tab)).toBe("rest");
    expect(server.cases.get("a")?.map((entry) => entry.id)).toEqual(["a-open", "own"]);
  });

  it("stops for a case that was removed, in words, and goes on with the others", async () => {
    const server = modelServer();
    const tab = newTab(server.answer);
    tab.device.add(opened("a"), opened("b"));
    server.removed.add("a");
    expect(await work(tab)).toBe("rest");
    expect(tab.device.places.get("a")?.trouble?.code).toBe("case-removed");
    expect(tab.device.kept.has("a-open") && tab.device.unsent.has("a-open")).toBe(true);
    expect(server.cases.has("b")).toBe(true);
    // It is not asked again and again.
    const asked = tab.asks.length;
    expect(await work(tab)).toBe("rest");
    expect(tab.asks.length).toBe(asked);
  });

  it("sends a case anew to a server that no longer has it", async () => {
    const before = modelServer();
    const tab = newTab((ask) => current.answer(ask));
    let current = before;
    tab.device.add(opened("a"), note("a", "one", 1));
    await work(tab);
    current = modelServer();
    tab.device.add(note("a", "two", 2));
    expect(await work(tab)).toBe("rest");
    expect(current.cases.get("a")?.map((entry) => entry.id)).toEqual(["a-open", "one", "two"]);
  });

  it("sends what an older copy of the server lacks", async () => {
    const server = modelServer();
    const tab = newTab(server.answer);
    tab.device.add(opened("a"), note("a", "one", 1), note("a", "two", 2));
    await work(tab);
    server.cases.set("a", server.cases.get("a")!.slice(0, 2));
    memoryOf(tab.memory, "a", 200).asked = true;
    expect(await work(tab)).toBe("rest");
    expect(server.cases.get("a")?.map((entry) => entry.id)).toEqual(["a-open", "one", "two"]);
    expect(tab.device.places.get("a")).toEqual({ caseId: "a", after: 3, version: 3 });
  });

  it("sends a case that the server does not show only once, and keeps it", async () => {
    const tab = newTab((ask) =>
      ask.path === "/api/v1/me"
        ? reply(200, { person: null, local: true, ownerNeeded: true })
        : problem(404, "no-such-case"),
    );
    tab.device.add(opened("a"));
    expect(await work(tab)).toBe("rest");
    expect(tab.asks.length).toBe(2);
    expect(tab.device.places.get("a")?.trouble?.code).toBe("not-yours");
    expect(tab.device.unsent.has("a-open")).toBe(true);
  });

  it("waits longer each time the server is away, as long as the server asks, and loses nothing", async () => {
    let away = true;
    const server = modelServer();
    const tab = newTab((ask) => (away ? { is: "lost" } : server.answer(ask)));
    tab.device.add(opened("a"));
    const waits: number[] = [];
    for (let k = 0; k < 9; k++) {
      const ms = await work(tab);
      if (ms === "rest") throw new Error("It gave up.");
      waits.push(ms);
      tab.now += ms;
    }
    // Doubling from a second to a minute, three quarters of it at a share of a half.
    expect(waits).toEqual([750, 1500, 3000, 6000, 12000, 24000, 45000, 45000, 45000]);
    expect(tab.memory.standing.is).toBe("away");
    away = false;
    expect(await work(tab)).toBe("rest");
    expect(server.cases.has("a")).toBe(true);

    const busy = newTab((ask) =>
      ask.path === "/api/v1/me"
        ? server.answer(ask)
        : { ...(problem(429, "too-many") as Extract<Reply, { is: "reply" }>), retryAfterMs: 30_000 },
    );
    busy.device.add(opened("c"));
    expect(await work(busy)).toBe(30_000);
  });

  it.each([
    ["plain files", { is: "reply", status: 404, json: undefined } satisfies Reply, "no-server"],
    ["no account made", problem(503, "no-owner-yet"), "owner-needed"],
    ["not signed in", problem(401, "sign-in"), "sign-in"],
    ["nobody signed in", reply(200, { person: null, local: false, ownerNeeded: false }), "sign-in"],
    ["an owner is needed", reply(200, { person: null, local: false, ownerNeeded: true }), "owner-needed"],
  ])("keeps everything here and asks no more with %s", async (_name, answer, standing) => {
    const tab = newTab(() => answer);
    tab.device.add(opened("a"));
    expect(await work(tab)).toBe("rest");
    expect(tab.memory.standing.is).toBe(standing);
    expect(sentIds(tab)).toEqual([]);
    expect(tab.device.unsent.has("a-open")).toBe(true);
    expect(tab.asks.length).toBeLessThanOrEqual(2);
  });

  it.each([
    [
      "somebody else",
      { person: { id: "ben", name: "Ben", role: "trainee" }, local: false, ownerNeeded: false },
    ],
    ["nobody", { person: null, local: false, ownerNeeded: false }],
    ["this computer", { person: null, local: true, ownerNeeded: true }],
  ])("never sends one person's entries as %s", async (_name, me) => {
    const tab = newTab(() => reply(200, me), memoryDevice(), "ana");
    tab.device.add(opened("a"));
    expect(await work(tab)).toBe("rest");
    expect(sentIds(tab)).toEqual([]);
    expect(tab.device.unsent.has("a-open")).toBe(true);
  });

  it("asks who we are again when a session ends in the middle", async () => {
    let over = false;
    const server = modelServer();
    const tab = newTab(
      (ask) => {
        if (ask.path === "/api/v1/me")
          return reply(200, {
            person: over ? null : { id: "ana", name: "Ana", role: "technician" },
            local: false,
            ownerNeeded: false,
          });
        return over ? problem(401, "sign-in") : server.answer(ask);
      },
      memoryDevice(),
      "ana",
    );
    tab.device.add(opened("a"));
    await work(tab);
    over = true;
    tab.device.add(note("a", "one", 1));
    expect(await work(tab)).toBe("rest");
    expect(tab.memory.standing.is).toBe("sign-in");
    expect(tab.memory.me?.person).toBeUndefined();
    expect(tab.device.unsent.has("one")).toBe(true);
  });

  it("fetches a long case in pages and counts what it cannot read", async () => {
    const server = modelServer();
    const long = [opened("a"), ...Array.from({ length: 1200 }, (_, k) => note("a", `n${k}`, k + 1))];
    server.cases.set("a", [...long, { ...note("a", "odd", 1), at: "yesterday" }]);
    const tab = newTab(server.answer);
    memoryOf(tab.memory, "a", 200).asked = true;
    expect(await work(tab)).toBe("rest");
    expect(tab.device.kept.size).toBe(1201);
    expect(tab.device.places.get("a")).toEqual({ caseId: "a", after: 1202, version: 1202, unread: 1 });
    expect(tab.asks.filter((ask) => ask.path.includes("/entries?")).length).toBe(3);
  });

  it("does not let a case that makes the server stumble hold up another", async () => {
    const server = modelServer();
    const tab = newTab((ask) => (ask.path.includes("/a/") ? problem(500, "stumbled") : server.answer(ask)));
    tab.device.add(opened("a"), opened("b"));
    expect(await work(tab)).toBe(750);
    expect(server.cases.has("b")).toBe(true);
    expect(tab.memory.standing.is).toBe("answers");
  });
});
