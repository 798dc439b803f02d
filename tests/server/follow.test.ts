import { beforeAll, describe, expect, it } from "vitest";
import { openServer } from "../../app/server/server.ts";
import { Watch } from "../../app/server/watch.ts";
import { appendEntries, removeCase, type Store } from "../../lib/store/index.ts";
import { note, opening, second } from "../support/made-entries.ts";
import { forEachStore } from "../support/stores.ts";
import { call, desk, keepCase, type Person, routeOf, signedIn } from "./desk.ts";

const FOLLOW = routeOf("GET", "/cases/{id}/events");
const ADD = routeOf("POST", "/cases/{id}/entries");

interface Followed {
  readonly response: Response;
  /** The next event or comment as it stands in the stream; undefined at its end. */
  readonly next: () => Promise<string | undefined>;
  readonly leave: () => Promise<void>;
}

async function follow(as: string, id: string, signal?: AbortSignal): Promise<Followed> {
  const response = await call(FOLLOW, { as, params: { id }, ...(signal !== undefined && { signal }) });
  const reader = (response.body as ReadableStream<BufferSource>)
    .pipeThrough(new TextDecoderStream())
    .getReader();
  let text = "";
  const next = async (): Promise<string | undefined> => {
    while (!text.includes("\n\n")) {
      const { value, done } = await reader.read();
      if (done) return undefined;
      text += value;
    }
    const [event = "", ...rest] = text.split("\n\n");
    text = rest.join("\n\n");
    return event;
  };
  return { response, next, leave: () => reader.cancel() };
}

/** Entries that come by another instance of the app: straight into the database. */
const addElsewhere = (store: Store, caseId: string, id: string) =>
  appendEntries(store, {
    caseId,
    entries: [note(caseId, id)],
    accountId: null,
    ownerId: null,
    now: second(2),
  });

// Source: WHATWG HTML, 9.2.5: lines "field: value", an empty line ends an event.
forEachStore("following a case", (databases) => {
  const held = desk(databases);
  let ana: Person;
  beforeAll(async () => {
    ana = await signedIn(held.store, "ana", "technician");
  });

  it("tells the version at once, and whenever it grows, by whichever instance", async () => {
    await keepCase(held.store, "grows", null);
    const { response, next, leave } = await follow(ana.cookie, "grows");
    expect(response.headers.get("content-type")).toBe("text/event-stream");
    expect(response.headers.get("cache-control")).toContain("no-transform");
    expect(await next()).toMatch(/^retry: \d+$/);
    expect(await next()).toBe("event: version\nid: 1\ndata: 1");
    await addElsewhere(held.store, "grows", "a");
    expect(await next()).toBe("event: version\nid: 2\ndata: 2");
    await call(ADD, { as: ana.cookie, params: { id: "grows" }, body: { entries: [note("grows", "b")] } });
    expect(await next()).toBe("event: version\nid: 3\ndata: 3");
    await leave();
    expect((await openServer()).watch.size).toBe(0);
  });

  it("says when the case is removed, and ends", async () => {
    await keepCase(held.store, "goes", null);
    const { next } = await follow(ana.cookie, "goes");
    await next();
    await next();
    await removeCase(held.store, "goes", second(3));
    expect(await next()).toMatch(/^event: removed\n/);
    expect(await next()).toBeUndefined();
  });

  it("ends with the connection, and nothing goes on listening", async () => {
    await keepCase(held.store, "cut", null);
    const connection = new AbortController();
    const { next } = await follow(ana.cookie, "cut", connection.signal);
    const { watch } = await openServer();
    expect(watch.size).toBe(1);
    connection.abort();
    await next();
    await next();
    expect(await next()).toBeUndefined();
    expect(watch.size).toBe(0);
  });

  it("tells each of many who follow, and each only of their case", async () => {
    for (const id of ["one", "two"]) await keepCase(held.store, id, null);
    const followed = await Promise.all(["one", "one", "two"].map((id) => follow(ana.cookie, id)));
    for (const { next } of followed) {
      await next();
      await next();
    }
    await addElsewhere(held.store, "one", "a");
    await addElsewhere(held.store, "two", "a");
    await addElsewhere(held.store, "two", "b");
    expect(await followed[0]?.next()).toContain("data: 2");
    expect(await followed[1]?.next()).toContain("data: 2");
    expect(await followed[2]?.next()).toMatch(/data: [23]/);
    await Promise.all(followed.map(({ leave }) => leave()));
  });
});

describe("news of cases", () => {
  forEachStore("from the database", (databases) => {
    it("never go back, come once, and reach who came with an older version", async () => {
      const store = await databases.open();
      await appendEntries(store, {
        caseId: "c",
        entries: [opening("c"), note("c", "a"), note("c", "b")],
        accountId: null,
        ownerId: null,
        now: second(0),
      });
      const watch = new Watch(store);
      const told: unknown[] = [];
      const stop = watch.listen("c", 3, (news) => told.push(news));
      watch.grew("c", 5);
      watch.grew("c", 4);
      watch.grew("c", 5);
      watch.grew("other", 9);
      const late: unknown[] = [];
      const stopLate = watch.listen("c", 2, (news) => late.push(news));
      expect([told, late]).toEqual([[5], [5]]);
      stop();
      watch.grew("c", 6);
      watch.end();
      stopLate();
      expect([told, late, watch.size]).toEqual([[5], [5, 6, "over"], 0]);
    });

    it("go on when the database does not answer for a while", async () => {
      const store = await databases.open();
      await keepCase(store, "c", null);
      let down = true;
      const watch = new Watch({
        ...store,
        get db() {
          if (down) throw new Error("away");
          return store.db;
        },
      });
      const told = new Promise((resolve) => watch.listen("c", 0, resolve));
      await new Promise((resolve) => {
        setTimeout(resolve, 1000);
      });
      down = false;
      expect(await told).toBe(1);
      watch.end();
    });
  });
});
