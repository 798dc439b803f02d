import { afterEach, beforeAll, describe, expect, it, vi } from "vitest";
import { ARGON2, hashPassword, verifyPassword } from "../../app/server/password.ts";
import { MOST_FOR_ONE_ACCOUNT, MOST_FROM_ONE_ADDRESS } from "../../app/server/attempts.ts";
import { makeSetUpCode } from "../../app/server/set-up-code.ts";
import { openServer } from "../../app/server/server.ts";
import { changeAccount, listAccounts, type Store } from "../../lib/store/index.ts";
import { second } from "../support/made-entries.ts";
import { forEachStore } from "../support/stores.ts";
import { call, cookieOf, desk, jsonOf, PASSWORD, routeOf, signedIn } from "./desk.ts";

const ME = routeOf("GET", "/me");
const FIRST = routeOf("POST", "/first-account");
const SIGN_IN = routeOf("POST", "/session");
const CASES = routeOf("GET", "/cases");
const ACCOUNTS = routeOf("GET", "/accounts");
const CHANGE = routeOf("PATCH", "/accounts/{id}");

const DAY_MS = 86_400_000;
const OLGA = { name: "Olga", email: "olga@harbour-lane.example", password: PASSWORD };
const LOOPBACK = { host: "127.0.0.1:3000", origin: "http://127.0.0.1:3000", "x-forwarded-for": "127.0.0.1" };

const typeOf = async (response: Response): Promise<string> => (await jsonOf<{ type: string }>(response)).type;
const me = (as: string): Promise<{ person: { name: string } | null; local: boolean; ownerNeeded: boolean }> =>
  jsonOf(call(ME, { as }));

afterEach(() => {
  vi.useRealTimers();
});

// Source: OWASP password storage cheat sheet: Argon2id with 19 MiB, two iterations, one degree of parallelism.
describe("a kept password", () => {
  it("is hashed as OWASP asks, each time with a salt of its own", async () => {
    const [one, two] = await Promise.all([hashPassword(PASSWORD), hashPassword(PASSWORD)]);
    expect(one).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$/);
    expect(ARGON2).toEqual({ memoryCost: 19 * 1024, timeCost: 2, parallelism: 1 });
    expect(one).not.toBe(two);
    expect(await verifyPassword(one, PASSWORD)).toBe(true);
    expect(await verifyPassword(one, `${PASSWORD} `)).toBe(false);
  });

  it("is the same however the keyboard composes its letters", async () => {
    expect(await verifyPassword(await hashPassword("z\u00fcrich caf\u00e9"), "zu\u0308rich cafe\u0301")).toBe(
      true,
    );
  });
});

forEachStore("at the machine itself, with no account", (databases) => {
  desk(databases, { CORNERWISE_BOUND: "loopback" });

  it("everything works for the one person there", async () => {
    expect(await jsonOf(call(ME, { headers: LOOPBACK }))).toEqual({
      person: null,
      local: true,
      ownerNeeded: true,
      history: expect.any(String),
    });
    expect((await call(CASES, { headers: LOOPBACK })).status).toBe(200);
  });

  it.each<[string, Record<string, string>]>([
    ["under another name", { ...LOOPBACK, host: "evil.example" }],
    ["from another machine", { ...LOOPBACK, "x-forwarded-for": "10.0.0.9" }],
    ["through a relay", { ...LOOPBACK, via: "1.1 relay" }],
  ])("nothing is served %s", async (_how, headers) => {
    const response = await call(CASES, { headers });
    expect([response.status, await typeOf(response)]).toEqual([503, "/problems/no-owner-yet"]);
  });

  it("ends when the first account is made there, which needs no code", async () => {
    const response = await call(FIRST, { body: OLGA, headers: LOOPBACK });
    expect(response.status).toBe(201);
    expect((await call(CASES, { headers: LOOPBACK })).status).toBe(401);
    expect(await me(cookieOf(response))).toEqual({
      person: { id: expect.any(String), name: "Olga", role: "owner" },
      local: false,
      ownerNeeded: false,
      history: expect.any(String),
    });
  });
});

forEachStore("on the network, with no account", (databases) => {
  const held = desk(databases);
  const code = (): Promise<string> => makeSetUpCode(held.store, new Date());

  it("no data is served, and what is there to do is said", async () => {
    expect(await jsonOf(call(ME))).toEqual({ person: null, local: false, ownerNeeded: true });
    expect((await call(CASES, { headers: LOOPBACK })).status).toBe(503);
    expect((await call(SIGN_IN, { body: { email: OLGA.email, password: PASSWORD } })).status).toBe(401);
  });

  it("the set-up code has 160 bits, each time others", async () => {
    const codes = await Promise.all([code(), code()]);
    for (const made of codes) expect(made).toMatch(/^([A-Z2-7]{4}-){7}[A-Z2-7]{4}$/);
    expect(codes[0]).not.toBe(codes[1]);
  });

  it.each([undefined, "", "AAAA-AAAA-AAAA-AAAA-AAAA-AAAA-AAAA-AAAA"])(
    "no owner is made with the code %s",
    async (setUpCode) => {
      const response = await call(FIRST, {
        body: { ...OLGA, ...(setUpCode !== undefined && { setUpCode }) },
      });
      expect([response.status, await typeOf(response)]).toEqual([403, "/problems/wrong-set-up-code"]);
      expect(await listAccounts(held.store)).toEqual([]);
    },
  );

  it("a code is over after a day", async () => {
    const old = await makeSetUpCode(held.store, new Date(Date.now() - DAY_MS - 1));
    expect((await call(FIRST, { body: { ...OLGA, setUpCode: old } })).status).toBe(403);
  });

  it("of many who hold codes and come at once, one becomes the owner", async () => {
    const codes = await Promise.all(Array.from({ length: 5 }, code));
    const tries = codes.map((setUpCode, i) =>
      call(FIRST, {
        body: { ...OLGA, email: `o${i}@harbour-lane.example`, setUpCode: setUpCode.toLowerCase() },
      }),
    );
    const statuses = (await Promise.all(tries)).map(({ status }) => status);
    expect(statuses.toSorted((a, b) => a - b)).toEqual([201, 409, 409, 409, 409]);
    expect((await listAccounts(held.store)).map(({ role }) => role)).toEqual(["owner"]);
    expect((await call(FIRST, { body: { ...OLGA, setUpCode: await code() } })).status).toBe(409);
  });
});

forEachStore("signing in", (databases) => {
  const held = desk(databases);
  const store = (): Store => held.store;
  const signIn = (email: string, password: string, headers: Record<string, string> = {}): Promise<Response> =>
    call(SIGN_IN, { body: { email, password }, headers });

  // Source: OWASP session management cheat sheet: HttpOnly and SameSite; RFC 6265, 4.1.2.
  it("gives a cookie that scripts and other sites cannot use", async () => {
    await signedIn(store(), "ana", "technician");
    const response = await signIn("Ana@Harbour-Lane.example", PASSWORD);
    const [cookie = "", ...others] = response.headers.getSetCookie();
    expect(others).toEqual([]);
    expect(cookie).toMatch(/^cornerwise\.session_token=[^;]{40,};/);
    for (const part of [/; HttpOnly/i, /; SameSite=Strict/i, /; Path=\//i]) expect(cookie).toMatch(part);
    expect(cookie).not.toMatch(/domain=/i);
    expect(await me(cookieOf(response))).toMatchObject({ person: { name: "ana" } });
  });

  // Source: OWASP authentication cheat sheet, "Authentication and Error Messages": one answer for every way to fail.
  it("fails alike for a wrong password, an unknown address, no address, a disabled account", async () => {
    await signedIn(store(), "dora", "technician");
    await changeAccount(store(), "dora", undefined, { disabled: true }, second(1));
    const answers = await Promise.all(
      [
        ["ana@harbour-lane.example", "wrong password here"],
        ["nobody@harbour-lane.example", PASSWORD],
        ["not an address", PASSWORD],
        ["", ""],
        ["dora@harbour-lane.example", PASSWORD],
      ].map(async ([email = "", password = ""]) => {
        const response = await signIn(email, password);
        return {
          status: response.status,
          cookies: response.headers.getSetCookie(),
          body: await response.text(),
        };
      }),
    );
    for (const answer of answers) expect(answer).toEqual(answers[0]);
    expect(answers[0]).toMatchObject({ status: 401, cookies: [] });
  });

  it("is not possible with a cookie that was made up or changed", async () => {
    const { cookie } = await signedIn(store(), "eva", "technician");
    expect((await call(CASES, { as: cookie })).status).toBe(200);
    const forged = [
      cookie.replace(/=./, "=A"),
      `${cookie}x`,
      "cornerwise.session_token=x.y",
      "cornerwise.session_token=",
    ];
    for (const as of forged) expect((await call(CASES, { as })).status, as).toBe(401);
  });

  it("ends here, or everywhere", async () => {
    const { email, cookie: one } = await signedIn(store(), "fay", "technician");
    const two = cookieOf(await signIn(email, PASSWORD));
    const three = cookieOf(await signIn(email, PASSWORD));
    const out = await call(routeOf("DELETE", "/session"), { as: one });
    expect(out.headers.getSetCookie().join()).toMatch(/cornerwise\.session_token=;.*Max-Age=0/i);
    expect([(await me(one)).person, (await me(two)).person !== null]).toEqual([null, true]);
    await call(routeOf("DELETE", "/sessions"), { as: two });
    for (const as of [one, two, three]) expect((await call(CASES, { as })).status).toBe(401);
  });

  it("is over when it was not used for a fortnight, and goes on while it is", async () => {
    const { email } = await signedIn(store(), "gil", "technician");
    const start = Date.now();
    vi.useFakeTimers({ toFake: ["Date"], now: start });
    const cookie = cookieOf(await signIn(email, PASSWORD));
    vi.setSystemTime(start + 10 * DAY_MS);
    expect((await me(cookie)).person).not.toBeNull();
    vi.setSystemTime(start + 20 * DAY_MS);
    expect((await me(cookie)).person).not.toBeNull();
    vi.setSystemTime(start + 35 * DAY_MS);
    expect((await me(cookie)).person).toBeNull();
  });

  it("takes the new password after a change, which ends the other sessions", async () => {
    const { email, cookie: here } = await signedIn(store(), "hal", "technician");
    const there = cookieOf(await signIn(email, PASSWORD));
    const change = (current: string, next: string, as = here): Promise<Response> =>
      call(routeOf("PUT", "/password"), { as, body: { current, next } });
    const next = "another horse altogether";
    expect((await change("wrong password here", next)).status).toBe(401);
    expect((await change(PASSWORD, "short")).status).toBe(422);
    const done = await change(PASSWORD, next);
    expect(done.status).toBe(204);
    expect((await call(CASES, { as: there })).status).toBe(401);
    expect((await call(CASES, { as: cookieOf(done) })).status).toBe(200);
    expect((await signIn(email, PASSWORD)).status).toBe(401);
    expect((await signIn(email, next)).status).toBe(200);
  });

  // Source: NIST SP 800-63B, 5.2.2 (rate limiting); RFC 6585, 4 (429 with Retry-After).
  it("is limited for one account, wherever the tries come from, also when they come at once", async () => {
    const { email } = await signedIn(store(), "ida", "technician");
    const tries = Array.from({ length: MOST_FOR_ONE_ACCOUNT + 5 }, (_, i) =>
      signIn(email, "wrong password here", { "x-forwarded-for": `10.1.0.${i}` }),
    );
    const statuses = (await Promise.all(tries)).map(({ status }) => status);
    expect(statuses.filter((status) => status === 401)).toHaveLength(MOST_FOR_ONE_ACCOUNT);
    expect(statuses.filter((status) => status === 429)).toHaveLength(5);
    const blocked = await signIn(email, PASSWORD, { "x-forwarded-for": "10.1.1.1" });
    expect(blocked.status).toBe(429);
    const seconds = Number(blocked.headers.get("retry-after"));
    expect(seconds).toBeGreaterThan(0);
    vi.useFakeTimers({ toFake: ["Date"], now: Date.now() + (seconds + 1) * 1000 });
    expect((await signIn(email, PASSWORD, { "x-forwarded-for": "10.1.1.1" })).status).toBe(200);
  });

  it("is limited for one address, whichever accounts are tried", async () => {
    const from = { "x-forwarded-for": "10.2.0.1" };
    const tries = Array.from({ length: MOST_FROM_ONE_ADDRESS + 3 }, (_, i) =>
      signIn(`guess-${i}@harbour-lane.example`, "wrong password here", from),
    );
    const statuses = (await Promise.all(tries)).map(({ status }) => status).sort((a, b) => a - b);
    const refused = [429, 429, 429];
    expect(statuses).toEqual([...Array<number>(MOST_FROM_ONE_ADDRESS).fill(401), ...refused]);
  });

  it("keeps no address and no e-mail address that was tried in plain text", async () => {
    const rows = await store().db.selectFrom("rateLimit").select("key").execute();
    expect(rows.length).toBeGreaterThan(2);
    expect(rows.filter(({ key }) => key.includes("@"))).toEqual([]);
  });
});

forEachStore("behind TLS", (databases) => {
  desk(databases, { CORNERWISE_ORIGIN: "https://desk.example", CORNERWISE_SECRET: "s".repeat(40) });

  // Source: RFC 6265bis, 4.1.3.1: a name that begins with __Secure- is taken only with Secure.
  it("the cookie is Secure and its name says so", async () => {
    const { store } = await openServer();
    const setUpCode = await makeSetUpCode(store, new Date());
    const response = await call(FIRST, {
      body: { ...OLGA, setUpCode },
      headers: { origin: "https://desk.example" },
    });
    expect(response.status).toBe(201);
    const [cookie = ""] = response.headers.getSetCookie();
    expect(cookie).toMatch(/^__Secure-cornerwise\.session_token=/);
    expect(cookie).toMatch(/; Secure/i);
    expect(await me(cookieOf(response))).toMatchObject({ person: { name: "Olga" } });
  });

  it("writes from the plain address are refused", async () => {
    const response = await call(SIGN_IN, { body: {}, headers: { origin: "http://desk.example" } });
    expect([response.status, await typeOf(response)]).toEqual([403, "/problems/other-origin"]);
  });
});

forEachStore("accounts", (databases) => {
  const held = desk(databases);
  let owner = "";
  beforeAll(async () => {
    owner = (await signedIn(held.store, "olga", "owner")).cookie;
  });
  const change = (id: string, body: unknown, match = "*"): Promise<Response> =>
    call(CHANGE, { as: owner, params: { id }, body, headers: { "if-match": match } });

  it("are made by the owner, once for an e-mail address", async () => {
    const body = { name: " Tom ", email: "Tom@harbour-lane.example", role: "trainee", password: PASSWORD };
    const made = await call(routeOf("POST", "/accounts"), { as: owner, body });
    expect(made.headers.get("etag")).toBe('"1"');
    expect(await jsonOf(made)).toMatchObject({
      name: "Tom",
      email: "tom@harbour-lane.example",
      disabled: false,
    });
    const again = await call(routeOf("POST", "/accounts"), { as: owner, body });
    expect([again.status, await typeOf(again)]).toEqual([409, "/problems/email-taken"]);
    const { accounts } = await jsonOf<{ accounts: { name: string }[] }>(call(ACCOUNTS, { as: owner }));
    expect(accounts.map(({ name }) => name)).toEqual(["Tom", "olga"]);
    expect(JSON.stringify(accounts)).not.toMatch(/argon2|password/i);
  });

  it("change only from the version that was read", async () => {
    await signedIn(held.store, "uli", "trainee");
    expect((await change("uli", { name: "Uli" }, '"1"')).headers.get("etag")).toBe('"2"');
    expect((await change("uli", { name: "Late" }, '"1"')).status).toBe(412);
    expect((await call(CHANGE, { as: owner, params: { id: "uli" }, body: { name: "x" } })).status).toBe(428);
    expect((await change("nobody", { name: "x" })).status).toBe(404);
    expect((await change("uli", {})).status).toBe(422);
    expect((await change("uli", { email: "x@y.example" })).status).toBe(422);
  });

  it("end their sessions when they are disabled or get a new password", async () => {
    const { cookie, email } = await signedIn(held.store, "vera", "technician");
    expect((await change("vera", { role: "advisor" })).status).toBe(200);
    expect((await jsonOf<{ person: unknown }>(call(ME, { as: cookie }))).person).toMatchObject({
      role: "advisor",
    });
    await change("vera", { password: "set by the owner now" });
    expect((await call(CASES, { as: cookie })).status).toBe(401);
    const next = cookieOf(await call(SIGN_IN, { body: { email, password: "set by the owner now" } }));
    expect((await call(CASES, { as: next })).status).toBe(200);
    await change("vera", { disabled: true });
    expect((await call(CASES, { as: next })).status).toBe(401);
  });

  it("always leave an owner, also when two go at once", async () => {
    for (const body of [{ role: "technician" }, { disabled: true }]) {
      const response = await change("olga", body);
      expect([response.status, await typeOf(response)]).toEqual([409, "/problems/last-owner"]);
    }
    await signedIn(held.store, "wim", "owner");
    const both = await Promise.all(["olga", "wim"].map((id) => change(id, { role: "technician" })));
    expect(both.filter(({ status }) => status === 200)).toHaveLength(1);
    const owners = (await listAccounts(held.store)).filter(
      ({ role, disabled }) => role === "owner" && !disabled,
    );
    expect(owners).toHaveLength(1);
  });
});
