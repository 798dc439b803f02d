import { beforeAll, expect, it } from "vitest";
import { ROUTES } from "../../app/server/routes/index.ts";
import { makeLink } from "../../lib/store/index.ts";
import { second } from "../support/made-entries.ts";
import { forEachStore } from "../support/stores.ts";
import { call, desk, jsonOf, keepCase, type Person, routeOf, signedIn } from "./desk.ts";

const MAKE = routeOf("POST", "/cases/{id}/links");
const LIST = routeOf("GET", "/cases/{id}/links");
const REVOKE = routeOf("DELETE", "/links/{id}");
const SHARED = routeOf("GET", "/shared");

interface Made {
  readonly id: string;
  readonly token: string;
  readonly expiresAt: string;
}

forEachStore("a link to a case", (databases) => {
  const held = desk(databases);
  let ana: Person;
  beforeAll(async () => {
    ana = await signedIn(held.store, "ana", "technician");
    for (const id of ["shared", "other"]) await keepCase(held.store, id, "ana");
  });
  const make = (days = 7): Promise<Made> =>
    jsonOf(call(MAKE, { as: ana.cookie, params: { id: "shared" }, body: { kind: "read", days } }));
  const open = (token: string): Promise<Response> =>
    call(SHARED, { headers: { authorization: `Bearer ${token}` } });

  it("opens that case and its entries, to whoever holds it", async () => {
    const { token, expiresAt } = await make(7);
    const days = (Date.parse(expiresAt) - Date.now()) / 86_400_000;
    expect(days).toBeGreaterThan(6.9);
    expect(days).toBeLessThanOrEqual(7);
    const shared = await jsonOf<{ kind: string; entries: { caseId: string }[] }>(open(token));
    expect(shared).toMatchObject({ kind: "read", version: 1 });
    expect(shared.entries.map(({ caseId }) => caseId)).toEqual(["shared"]);
  });

  // The requirement: at least 128 bits; base64url carries six a letter (RFC 4648, 5).
  it("has a token of 192 random bits, of which the database keeps only a hash", async () => {
    const made = await Promise.all([make(), make(), make()]);
    for (const { token } of made) expect(token).toMatch(/^[A-Za-z0-9_-]{32}$/);
    expect(new Set(made.map(({ token }) => token)).size).toBe(3);
    const kept = JSON.stringify(await held.store.db.selectFrom("links").selectAll().execute());
    for (const { token } of made) expect(kept).not.toContain(token);
  });

  it("opens nothing but that one thing, whatever route it is sent to", async () => {
    const { token } = await make();
    const others = ROUTES.filter(({ action }) => !["see-status", "sign-in", "sign-out"].includes(action))
      .filter(({ path }) => !/shared|first-account|form/.test(path))
      // A trainee needs no account there; a stranger's token finds no attempt.
      .filter(({ action }) => action !== "work-exercise")
      .flatMap((route) => ["shared", "other"].map((id) => ({ route, id })));
    expect(others.length).toBeGreaterThan(20);
    for (const { route, id } of others) {
      const response = await call(route, { params: { id }, headers: { authorization: `Bearer ${token}` } });
      expect(response.status, `${route.method} ${route.path}`).toBe(401);
    }
  });

  // Source: RFC 6750, 3 and 3.1: 401 with invalid_token for a token that is expired, revoked or otherwise invalid.
  it("looks the same when it never was, has run out, was ended, or is for something else", async () => {
    const { id, token } = await make();
    expect((await call(REVOKE, { as: ana.cookie, params: { id } })).status).toBe(204);
    const base = { target: "shared", madeBy: null, madeAt: second(0) };
    await makeLink(held.store, {
      ...base,
      id: "old",
      token: "o".repeat(32),
      kind: "read",
      expiresAt: second(1),
    });
    const later = "2999-01-01T00:00:00.000Z";
    await makeLink(held.store, {
      ...base,
      id: "else",
      token: "e".repeat(32),
      kind: "else",
      expiresAt: later,
    });
    const tokens = [token, "o".repeat(32), "e".repeat(32), "n".repeat(32), "short", "", `${token}x`, "a b"];
    const answers = await Promise.all(
      tokens.map(async (tried) => {
        const response = await open(tried);
        return [response.status, response.headers.get("www-authenticate"), await response.text()];
      }),
    );
    for (const answer of answers) expect(answer).toEqual(answers[0]);
    expect(answers[0]?.slice(0, 2)).toEqual([401, 'Bearer realm="Cornerwise", error="invalid_token"']);
  });

  it("is listed without its token, the newest first, and shows when it was ended", async () => {
    await keepCase(held.store, "listed", "ana");
    const params = { id: "listed" };
    const { id, token } = await jsonOf<Made>(
      call(MAKE, { as: ana.cookie, params, body: { kind: "read", days: 1 } }),
    );
    await call(REVOKE, { as: ana.cookie, params: { id } });
    await call(REVOKE, { as: ana.cookie, params: { id } });
    const text = await (await call(LIST, { as: ana.cookie, params })).text();
    expect(text).not.toContain(token);
    const { links } = JSON.parse(text) as { links: unknown[] };
    expect(links).toMatchObject([{ id, kind: "read", madeBy: "ana", revokedAt: expect.any(String) }]);
  });

  it.each([
    {},
    { kind: "read", days: 0 },
    { kind: "read", days: 91 },
    { kind: "write", days: 1 },
    { kind: "customer", days: 31 },
    { kind: "customer", days: 7, words: "x".repeat(1001) },
    { kind: "customer", days: 7, words: "\u0000" },
    { kind: "read", days: 1.5 },
  ])("is not made from %o", async (body) => {
    expect((await call(MAKE, { as: ana.cookie, params: { id: "shared" }, body })).status).toBe(422);
  });
});
