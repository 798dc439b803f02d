import fc from "fast-check";
import { beforeAll, expect, it } from "vitest";
import { ROUTES } from "../../app/server/routes/index.ts";
import type { Route } from "../../app/server/route-description.ts";
import { isWrite } from "../../app/server/route-description.ts";
import { makeLink, type Store } from "../../lib/store/index.ts";
import { note, opening, second } from "../support/made-entries.ts";
import { begin, handOut, madeExercise } from "../support/made-exercise.ts";
import { forEachStore } from "../support/stores.ts";
import { type Call, call, cookieOf, desk, keepCase, PASSWORD, signedIn, wellFormed } from "./desk.ts";

const SEED = 20_261_128;
/** Runs on the embedded database, as many as were asked for; PostgreSQL costs more time for each. */
const RUNS = { embedded: 10_000, postgres: 2000 };

/** What none of our answers may hold: where a file lies, what called what, what was asked of the database. */
const LEAKS =
  /node_modules|\.[cm]?[jt]s[:)]|\bat \S+ \(|SQLITE|sqlite|postgres|\bselect \b.*\bfrom\b|insert into|\/tmp\/|stack/i;

/** Routes that would end the session that the other calls need. */
const ENDS_SESSION = /\/sessions?$/;
const FUZZED = ROUTES.filter(({ method, path }) => !(method === "DELETE" && ENDS_SESSION.test(path)));

/** Bodies that nothing is wrong with, by the end of the path that they belong to. */
const GOOD: Readonly<Record<string, readonly unknown[]>> = {
  entries: [
    { entries: [opening("known"), note("known", "n")] },
    { entries: [note("known", "attempted")] },
    { entries: [opening("known", { customer: "Somebody else" })] },
    {
      entries: [
        opening("fresh"),
        { ...note("fresh", "p"), kind: "hologram", of: { deep: [1, { a: null }] } },
      ],
    },
  ],
  links: [
    { kind: "read", days: 7 },
    { kind: "customer", days: 7, words: "Please answer soon." },
  ],
  answers: [{ id: "device-made-1", question: "ask:complaint", choice: 0 }],
  words: [{ id: "device-made-2", text: "It clunks." }],
  session: [{ email: "owner@harbour-lane.example", password: PASSWORD }],
  accounts: [{ name: "Tom", email: "tom@harbour-lane.example", role: "trainee", password: PASSWORD }],
  password: [{ current: PASSWORD, next: `${PASSWORD}!` }],
  "{id}": [{ role: "trainee", disabled: true }, madeExercise()],
  exercises: [madeExercise()],
  "hand-outs": [{ expiresAt: "2027-01-01T00:00:00.000Z" }],
  attempts: [
    { id: "begun-here", token: "token-of-known", key: "k".repeat(32) },
    { id: "by-code-1", code: "C0DEKNOWN" },
  ],
  checks: [{ id: "c1", check: "ask:noise:clunk", cautionsRead: true }],
  orders: [{ id: "p1", repair: "anti-roll-bar-link@front-left" }],
};
const goodBodies = ({ path }: Route): readonly unknown[] => GOOD[path.split("/").at(-1) ?? ""] ?? [{}];

const nasty = fc.oneof(
  fc.constantFrom<unknown>(
    null,
    true,
    0,
    -1,
    1e308,
    "",
    "\u0000",
    "\ud800",
    "x".repeat(30_000),
    "../../etc/passwd",
    "' or 1=1 --",
    "%",
    "<script>alert(1)</script>",
    "__proto__",
    "constructor",
    [],
    {},
    [[[[[[[[[[]]]]]]]]]],
  ),
  fc.jsonValue({ maxDepth: 4 }),
  fc.string({ unit: "binary" }),
);

const key = fc.oneof(
  fc.constantFrom(
    "__proto__",
    "constructor",
    "prototype",
    "toString",
    "id",
    "caseId",
    "at",
    "kind",
    "text",
    "entries",
  ),
  fc.string({ maxLength: 12 }),
);

/** A body that was good, with some of its parts replaced, taken out or added. */
function spoilt(value: unknown, changes: readonly { at: number; key: string; with: unknown }[]): unknown {
  const copy: unknown = structuredClone(value);
  const places: object[] = [];
  const gather = (inner: unknown): void => {
    if (inner === null || typeof inner !== "object") return;
    places.push(inner);
    for (const next of Object.values(inner)) gather(next);
  };
  gather(copy);
  for (const { at, key: name, with: replacement } of changes) {
    const place = places[at % places.length] as Record<string, unknown>;
    const keys = Object.keys(place);
    const chosen = at % 3 === 0 || keys.length === 0 ? name : (keys[at % keys.length] ?? name);
    if (at % 5 === 0) delete place[chosen];
    else
      Object.defineProperty(place, chosen, {
        value: replacement,
        enumerable: true,
        configurable: true,
        writable: true,
      });
  }
  return copy;
}

const bodyFor = (route: Route) =>
  fc.oneof(
    {
      weight: 5,
      arbitrary: fc
        .tuple(
          fc.constantFrom(...goodBodies(route)),
          fc.array(fc.record({ at: fc.nat(40), key, with: nasty }), { maxLength: 3 }),
        )
        .map(([good, changes]) => spoilt(good, changes)),
    },
    { weight: 2, arbitrary: nasty },
    { weight: 1, arbitrary: fc.string().map((text) => text) },
    { weight: 1, arbitrary: fc.uint8Array({ maxLength: 200 }) },
    {
      weight: 1,
      arbitrary: fc.constantFrom(
        '{"__proto__":{"polluted":1}}',
        '{"entries":[{"__proto__":{"polluted":1}}]}',
        "[".repeat(5000),
      ),
    },
  );

const otherId = fc.oneof(
  fc.constantFrom(
    "fresh",
    "owner",
    "none",
    "",
    "..",
    "__proto__",
    "a/b",
    "\u0000",
    "x".repeat(500),
    "%2e%2e",
  ),
  fc.string({ unit: "binary", maxLength: 80 }),
);
const id = fc.oneof({ weight: 2, arbitrary: fc.constant("known") }, { weight: 1, arbitrary: otherId });
const headerText = fc.string({ maxLength: 40 }).map((text) => text.replaceAll(/[^\x20-\x7e]/g, "").trim());
const query = fc.oneof(
  fc.constant(""),
  fc
    .array(
      fc.tuple(
        fc.oneof(fc.constantFrom("after", "limit", "closed", "text", "id", "caption", "__proto__"), key),
        fc.string({ unit: "binary", maxLength: 40 }),
      ),
      { maxLength: 3 },
    )
    .map(
      (pairs) =>
        `?${new URLSearchParams(pairs.map(([name, value]) => [wellFormed(name), wellFormed(value)])).toString()}`,
    ),
  fc.string({ maxLength: 30 }).map((text) => `?${encodeURI(wellFormed(text))}`),
);

/** Opens the form of the case that everything is tried on. */
const FORM_TOKEN = "f".repeat(32);
const isForm = ({ path }: Route): boolean => path.startsWith("/api/v1/form");

/** Most requests have to come through to where there is more to break. */
const seldom = <T>(arbitrary: fc.Arbitrary<T>) =>
  fc.oneof({ weight: 12, arbitrary: fc.constant(undefined) }, { weight: 1, arbitrary });

const request = fc.constantFrom(...FUZZED).chain((route) =>
  fc.record({
    route: fc.constant(route),
    // The one case that everything else is tried on stays.
    id: route.method === "DELETE" ? otherId : id,
    query,
    body: bodyFor(route),
    who: fc.constantFrom("owner", "owner", "trainee", "nobody"),
    headers: fc.record({
      "if-match": fc.oneof(
        headerText,
        fc.constantFrom("*", '"1"', '"-1"', '"999999999999999999999"', undefined),
      ),
      "if-none-match": seldom(headerText),
      authorization: isForm(route)
        ? fc.oneof({ weight: 9, arbitrary: fc.constant(`Bearer ${FORM_TOKEN}`) }, seldom(headerText))
        : seldom(headerText.map((text) => `Bearer ${text}`)),
      "content-type": seldom(
        fc.constantFrom("application/json", "text/plain", "application/zip", "multipart/form-data", ""),
      ),
      origin: seldom(fc.constantFrom("null", "http://evil.example", "::")),
      cookie: seldom(headerText.map((text) => `cornerwise.session_token=${text}`)),
    }),
  }),
);

/** How much there is of everything that a request could leave behind. */
async function amounts({ db }: Store): Promise<string> {
  const tables = [
    "cases",
    "entries",
    "photos",
    "links",
    "user",
    "account",
    "exercises",
    "hand_outs",
    "attempts",
    "attempt_entries",
  ] as const;
  const counts = await Promise.all(
    tables.map((table) =>
      db
        .selectFrom(table)
        .select(({ fn }) => fn.countAll<number>().as("n"))
        .executeTakeFirst(),
    ),
  );
  return JSON.stringify(counts.map((row) => Number(row?.n)));
}

forEachStore("whatever is sent", (databases) => {
  const held = desk(databases);
  const cookies: Record<string, string | undefined> = {};
  beforeAll(async () => {
    cookies.owner = (await signedIn(held.store, "owner", "owner")).cookie;
    cookies.trainee = (await signedIn(held.store, "tim", "trainee")).cookie;
    await keepCase(held.store, "known", "owner");
    await handOut(held.store, "known", "owner");
    await begin(held.store, "known", "known", { traineeId: "owner" });
    await makeLink(held.store, {
      ...{ id: "form", token: FORM_TOKEN, kind: "customer", target: "known", madeBy: null },
      ...{ madeAt: second(0), expiresAt: "2999-01-01T00:00:00.000Z" },
    });
  });

  it("nothing breaks, no refused request leaves anything behind, and no answer tells how the server is made", async () => {
    const statuses = new Map<number, number>();
    let before = await amounts(held.store);
    await fc.assert(
      fc.asyncProperty(request, async (sent) => {
        const { route, who, headers } = sent;
        const as = cookies[who];
        const given: Call = {
          params: { id: sent.id },
          query: sent.query,
          headers: Object.fromEntries(
            Object.entries(headers).flatMap(([name, text]) => (text === undefined ? [] : [[name, text]])),
          ),
          ...(as !== undefined && { as }),
          ...(isWrite(route) && { body: sent.body ?? null }),
        };
        // So many uses of one form would only be told to wait.
        if (isForm(route))
          await held.store.db.deleteFrom("rateLimit").where("key", "like", "form%").execute();
        const response = await call(route, given);
        const after = isWrite(route) ? await amounts(held.store) : before;
        statuses.set(response.status, (statuses.get(response.status) ?? 0) + 1);
        // A change of the password goes on under another session.
        if (route.path.endsWith("/password") && response.status < 400) cookies[who] = cookieOf(response);
        expect(response.status).toBeLessThan(500);
        if (response.status >= 400) {
          expect(after).toBe(before);
          expect(await response.text()).not.toMatch(LEAKS);
        } else await response.body?.cancel();
        before = after;
      }),
      { seed: SEED, numRuns: RUNS[databases.kind] },
    );
    expect(Reflect.get({}, "polluted")).toBeUndefined();
    // Else the requests would be too bad to reach anything.
    for (const reached of [200, 400, 401, 403, 404, 409, 415, 422, 428]) {
      expect(statuses.get(reached) ?? 0, `answers with ${reached}`).toBeGreaterThan(0);
    }
  }, 300_000);
});
