import { expect, it } from "vitest";
import { closeServer, openServer } from "../../app/server/server.ts";
import { caseHead, entriesAfter } from "../../lib/store/index.ts";
import { made, note, opening, second } from "../support/made-entries.ts";
import { forEachStore } from "../support/stores.ts";
import { call, cookieOf, desk, jsonOf, PASSWORD, routeOf, signedIn } from "./desk.ts";

const TAKE = routeOf("GET", "/archive");
const RESTORE = routeOf("POST", "/archive");
const ADD = routeOf("POST", "/cases/{id}/entries");
const LOOPBACK = { host: "127.0.0.1:3000", origin: "http://127.0.0.1:3000", "x-forwarded-for": "127.0.0.1" };

forEachStore("the archive of a workshop", (databases) => {
  const held = desk(databases, { CORNERWISE_BOUND: "loopback" });

  it("taken out by the owner and put into an empty one at the machine itself, holds what there was", async () => {
    const { store } = held;
    const olga = await signedIn(store, "olga", "owner");
    const sent = [opening("kept"), note("kept", "n")];
    await call(ADD, { as: olga.cookie, params: { id: "kept" }, body: { entries: sent } });
    const taken = await call(TAKE, { as: olga.cookie });
    expect(taken.headers.get("content-type")).toBe("application/zip");
    expect(taken.headers.get("content-disposition")).toMatch(
      /^attachment; filename="cornerwise-\d{4}-\d\d-\d\d\.zip"$/,
    );
    const bytes = new Uint8Array(await taken.arrayBuffer());
    expect(Buffer.from(bytes).toString("latin1")).not.toContain(olga.cookie.split("=")[1]?.split(".")[0]);

    await closeServer();
    process.env.CORNERWISE_DATABASE = await databases.fresh();
    const given = await call(RESTORE, { body: bytes, headers: LOOPBACK });
    expect(await jsonOf(given)).toMatchObject({ cases: 1, entries: 2, accounts: 1, links: 0 });
    const next = (await openServer()).store;
    const { entries } = await entriesAfter(next, "kept", 0, 10);
    expect(entries.map(({ entry }) => entry)).toEqual(sent);
    expect((await caseHead(next, "kept"))?.ownerId).toBe("olga");
    // Who sat at the machine is nobody from now on; the session was not in it, the password was.
    expect((await call(TAKE, { headers: LOOPBACK })).status).toBe(401);
    expect((await call(TAKE, { as: olga.cookie })).status).toBe(401);
    const again = await call(routeOf("POST", "/session"), {
      body: { email: olga.email, password: PASSWORD },
    });
    const owner = cookieOf(again);
    const refused = await call(RESTORE, { as: owner, body: bytes });
    expect([refused.status, await jsonOf(refused)]).toMatchObject([409, { type: "/problems/not-empty" }]);
  });

  it.each<[string, (bytes: Uint8Array) => Uint8Array]>([
    ["is cut", (bytes) => bytes.slice(0, bytes.length - 100)],
    ["has a changed byte", (bytes) => bytes.map((byte, i) => (i === 60 ? byte ^ 1 : byte))],
    ["is empty", () => new Uint8Array()],
    ["is text", () => new TextEncoder().encode("PK no zip")],
  ])("that %s is refused, and nothing of it is kept", async (_what, spoil) => {
    await closeServer();
    process.env.CORNERWISE_DATABASE = await databases.fresh();
    await call(ADD, { params: { id: "c" }, headers: LOOPBACK, body: { entries: [opening("c")] } });
    const bytes = new Uint8Array(await (await call(TAKE, { headers: LOOPBACK })).arrayBuffer());
    await closeServer();
    process.env.CORNERWISE_DATABASE = await databases.fresh();
    const response = await call(RESTORE, { body: spoil(bytes), headers: LOOPBACK });
    expect([response.status, await jsonOf(response)]).toMatchObject([422, { type: "/problems/bad-archive" }]);
    expect(await caseHead((await openServer()).store, "c")).toBeUndefined();
  });

  // Source: RFC 4180, 2: lines that end in CRLF, a heading line.
  it("has a table of checks for each case", async () => {
    const check = made("table", "a", second(2), {
      kind: "answered",
      finding: "play-3-9",
      state: "present",
      how: "check",
    });
    await call(ADD, {
      params: { id: "table" },
      headers: LOOPBACK,
      body: { entries: [opening("table"), check] },
    });
    const response = await call(routeOf("GET", "/cases/{id}/checks.csv"), {
      params: { id: "table" },
      headers: LOOPBACK,
    });
    expect(response.headers.get("content-type")).toMatch(/^text\/csv/);
    const lines = (await response.text()).split("\r\n");
    expect(lines).toHaveLength(3);
    expect(lines[1]).toContain("play-3-9");
  });
});
