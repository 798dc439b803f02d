import { existsSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { ROUTES } from "../../app/server/routes/index.ts";
import type { Route } from "../../app/server/route-description.ts";
import { changeAccount, keepPhoto, makeLink, type Store, writeArchive } from "../../lib/store/index.ts";
import { filesBelow } from "../support/glob.ts";
import { pngOf } from "../support/made-pictures.ts";
import { note, second } from "../support/made-entries.ts";
import { begin, handOut, madeExercise } from "../support/made-exercise.ts";
import { forEachStore } from "../support/stores.ts";
import { type Call, call, desk, fileOf, keepCase, PASSWORD, type Person, signedIn } from "./desk.ts";

const ROOT = join(import.meta.dirname, "../..");
const nameOf = ({ method, path }: Route): string => `${method} ${path.replace("/api/v1", "")}`;

const ASKERS = [
  "nobody",
  "disabled",
  "link",
  "owner",
  "advisor",
  "technician",
  "instructor",
  "trainee",
] as const;
type AskerName = (typeof ASKERS)[number];

/**
 * Status of every route for every asker, once accounts exist. For routes of one case four of them: an own case, one of
 * a (or another) trainee, somebody else's, one that is not there. Written from the roles as agreed, not from the code:
 * owner, advisor and technician see all cases, instructors their own and those of trainees, trainees their own; a case that
 * is not theirs to see is not there (404); a link opens its one case by /shared and nothing else.
 */
const TABLE: Record<string, Record<AskerName, string>> = {
  "GET /health": everybody("200"),
  "GET /openapi.json": everybody("200"),
  "GET /me": everybody("200"),
  "POST /first-account": everybody("409"),
  "POST /session": everybody("200"),
  "DELETE /session": everybody("204"),
  "DELETE /sessions": staff("204"),
  "PUT /password": staff("204"),
  "GET /accounts": { ...staff("403"), owner: "200" },
  "POST /accounts": { ...staff("403"), owner: "201" },
  "PATCH /accounts/{id}": { ...staff("403"), owner: "200" },
  "GET /people": { ...staff("200"), trainee: "403" },
  "GET /cases": staff("200"),
  "GET /cases/{id}": byCase("200", "404"),
  "GET /cases/{id}/entries": byCase("200", "404"),
  "GET /cases/{id}/events": byCase("200", "404"),
  "GET /cases/{id}/file.json": byCase("200", "404"),
  // What is not there is opened by it.
  "POST /cases/{id}/entries": byCase("200", "200"),
  "POST /cases/{id}/photos": byCase("201", "404"),
  "GET /cases/{id}/photos/{photoId}": byCase("200", "404"),
  "DELETE /cases/{id}": { ...staff("403 403 403 403"), owner: "204 204 204 404" },
  "GET /cases/{id}/links": { ...byCase("200", "404"), trainee: "403 403 403 403" },
  "POST /cases/{id}/links": { ...byCase("201", "404"), trainee: "403 403 403 403" },
  "DELETE /links/{id}": { ...byCase("204", "404"), trainee: "403 403 403 403" },
  "GET /cases/{id}/checks.csv": byCase("200", "404"),
  "GET /archive": { ...staff("403"), owner: "200" },
  // Every desk of these tests has cases, so that nothing can be restored.
  "POST /archive": { ...staff("403"), owner: "409" },
  "GET /shared": { ...everybody("401"), link: "200" },
  // Owners see all exercises and attempts, instructors those of their own exercises.
  "GET /exercises": instructors("200"),
  "GET /ready-exercises": instructors("200"),
  "POST /exercises": instructors("201"),
  "GET /exercises/{id}": byExercise("200"),
  "PUT /exercises/{id}": byExercise("200"),
  "DELETE /exercises/{id}": byExercise("204"),
  "GET /exercises/{id}/hand-outs": byExercise("200"),
  "POST /exercises/{id}/hand-outs": byExercise("201"),
  "DELETE /hand-outs/{id}": byExercise("204"),
  "GET /attempts": instructors("200"),
  "GET /attempts.csv": instructors("200"),
  "GET /attempts/board": instructors("200"),
  "GET /attempts/steps.csv": instructors("200"),
  "GET /attempts/statements.json": instructors("200"),
  // No record store is set for these tests.
  "POST /attempts/statements": instructors("409"),
  // Whoever holds a code works without an account, and then sees by the key of the browser what is theirs.
  "POST /attempts": everybody("201"),
  "GET /attempts/mine": everybody("200"),
  "GET /attempts/{id}": { ...byAttempt("200"), owner: "200 200 200 404" },
  "POST /attempts/{id}/checks": byAttempt("200"),
  "POST /attempts/{id}/entries": byAttempt("200"),
  "POST /attempts/{id}/orders": byAttempt("200"),
  "POST /attempts/{id}/verdict": byAttempt("200"),
  // None of these has ended: only who teaches may look.
  "GET /attempts/{id}/debrief": { ...byAttempt("409"), owner: "200 200 200 404" },
  // By the link of a form and nothing else; the link of these tests opens a case to read.
  "GET /form": everybody("401"),
  "POST /form/answers": everybody("401"),
  "POST /form/words": everybody("401"),
  "POST /form/photos": everybody("401"),
  "POST /form/done": everybody("401"),
  "DELETE /form/answers/{id}": everybody("401"),
};

function everybody(status: string): Record<AskerName, string> {
  return Object.fromEntries(ASKERS.map((asker) => [asker, status])) as Record<AskerName, string>;
}
function staff(status: string): Record<AskerName, string> {
  return { ...everybody(status), nobody: "401", disabled: "401", link: "401" };
}
function byCase(good: string, none: string): Record<AskerName, string> {
  const all = `${good} ${good} ${good} ${none}`;
  return { ...staff(all), instructor: `${good} ${good} 404 ${none}`, trainee: `${good} 404 404 ${none}` };
}
function instructors(status: string): Record<AskerName, string> {
  return { ...staff("403"), owner: status, instructor: status };
}
function byExercise(good: string): Record<AskerName, string> {
  return {
    ...staff("403 403 403 403"),
    owner: `${good} ${good} ${good} 404`,
    instructor: `${good} 404 404 404`,
  };
}
function byAttempt(good: string): Record<AskerName, string> {
  const none = "404 404 404 404";
  return { ...everybody(`${good} 404 404 404`), nobody: none, disabled: none, link: none };
}

describe("the table of access", () => {
  it("names every route, and no other", () => {
    expect(Object.keys(TABLE).sort()).toEqual(ROUTES.map(nameOf).sort());
  });

  it("belongs to the files of routes, each of which is described", () => {
    const files = filesBelow(ROOT).filter((path) => /^app\/api\/.*\/route\.ts$/.test(path));
    expect(files.length).toBeGreaterThan(10);
    expect([...new Set(ROUTES.map(fileOf))].sort()).toEqual(files.sort());
    for (const route of ROUTES) expect(existsSync(join(ROOT, fileOf(route))), nameOf(route)).toBe(true);
  });

  it.each(ROUTES.map((route) => [fileOf(route)]))(
    "%s gives exactly the methods that are described",
    async (file) => {
      const exported = Object.keys((await import(join(ROOT, file))) as object).filter((name) =>
        /^[A-Z]+$/.test(name),
      );
      const described = ROUTES.filter((route) => fileOf(route) === file).map(
        ({ method }) => method as string,
      );
      expect(exported.sort()).toEqual(described.sort());
    },
  );
});

let made = 0;
const fresh = (what: string): string => `${what}-${++made}`;

forEachStore("access to the routes", (databases) => {
  const held = desk(databases);
  const people = new Map<AskerName, Person>();
  let token = "";

  beforeAll(async () => {
    const { store } = held;
    for (const role of ["owner", "advisor", "technician", "instructor", "trainee"] as const) {
      people.set(role, await signedIn(store, role, role));
    }
    people.set("disabled", await signedIn(store, "disabled", "technician"));
    await signedIn(store, "tilda", "trainee");
    await changeAccount(store, "disabled", undefined, { disabled: true }, second(1));
    await keepCase(store, "shared-case", "advisor");
    await handOut(store, "handed", "somebody");
    token = "t".repeat(32);
    await makeLink(store, {
      id: "shared-link",
      token,
      kind: "read",
      target: "shared-case",
      madeBy: "advisor",
      madeAt: second(0),
      expiresAt: "2999-01-01T00:00:00.000Z",
    });
  });

  /** Signs in anew: a route may have ended the session. */
  async function callAs(asker: AskerName, route: Route, given: Call): Promise<number> {
    if (asker === "link")
      return status(route, { ...given, headers: { ...given.headers, authorization: `Bearer ${token}` } });
    const person = people.get(asker);
    return status(route, person === undefined ? given : { ...given, as: person.cookie });
  }
  async function status(route: Route, given: Call): Promise<number> {
    const response = await call(route, given);
    await response.body?.cancel();
    return response.status;
  }

  /** Ids of an own case, exercise or attempt, a trainee's, somebody else's and one that is not there. */
  async function things(asker: AskerName, { path }: Route): Promise<string[]> {
    const { store } = held;
    const owners = [people.get(asker)?.id ?? null, "tilda", asker === "advisor" ? "technician" : "advisor"];
    const ids = owners.map(() => fresh("case"));
    for (const [index, id] of ids.entries()) {
      const owner = owners[index] ?? null;
      if (path.includes("/attempts/")) await begin(store, id, "handed", { traineeId: owner ?? "gone" });
      else if (/exercises|hand-outs/.test(path)) await handOut(store, id, owner);
      else await keepCase(store, id, owner);
    }
    return [...ids, fresh("missing")];
  }

  const cells = ROUTES.flatMap((route) => ASKERS.map((asker) => ({ route, asker, name: nameOf(route) })));
  it.each(cells)("$name for $asker", async ({ route, asker, name }) => {
    const { store } = held;
    const expected = TABLE[name]?.[asker].split(" ").map(Number);
    if (!/\/(cases|links|exercises|hand-outs|attempts)\/\{id\}/.test(route.path)) {
      expect([await callAs(asker, route, await goodCall(store, name))]).toEqual(expected);
    } else {
      const found: number[] = [];
      for (const id of await things(asker, route))
        found.push(await callAs(asker, route, await goodCall(store, name, id)));
      expect(found).toEqual(expected?.length === 1 ? Array(4).fill(expected[0]) : expected);
    }
    if (/DELETE \/sessions?|PUT \/password/.test(name)) await renew(asker);
  });

  async function renew(asker: AskerName): Promise<void> {
    const person = people.get(asker);
    if (person === undefined || asker === "disabled") return;
    people.delete(asker);
    const id = fresh(asker);
    people.set(asker, await signedIn(held.store, id, person.role));
  }
});

/**
 * Status of every route while nobody has an account: at the machine itself (for a case that is there and one that is not),
 * and on the network. One person at the machine may do everything that needs no account; on the network nothing is served.
 */
const WITHOUT_ACCOUNTS: Record<string, readonly [here: string, network: string]> = {
  "GET /health": ["200", "200"],
  "GET /openapi.json": ["200", "200"],
  "GET /me": ["200", "200"],
  "POST /session": ["401", "401"],
  "DELETE /session": ["204", "204"],
  "DELETE /sessions": ["403", "503"],
  "PUT /password": ["403", "503"],
  "GET /accounts": ["403", "503"],
  "POST /accounts": ["403", "503"],
  "PATCH /accounts/{id}": ["403", "503"],
  "GET /people": ["200", "503"],
  "GET /cases": ["200", "503"],
  "GET /cases/{id}": ["200 404", "503 503"],
  "GET /cases/{id}/entries": ["200 404", "503 503"],
  "GET /cases/{id}/events": ["200 404", "503 503"],
  "GET /cases/{id}/file.json": ["200 404", "503 503"],
  "GET /cases/{id}/checks.csv": ["200 404", "503 503"],
  "POST /cases/{id}/entries": ["200 200", "503 503"],
  "POST /cases/{id}/photos": ["201 404", "503 503"],
  "GET /cases/{id}/photos/{photoId}": ["200 404", "503 503"],
  "DELETE /cases/{id}": ["204 404", "503 503"],
  "GET /cases/{id}/links": ["200 404", "503 503"],
  "POST /cases/{id}/links": ["201 404", "503 503"],
  "DELETE /links/{id}": ["204 404", "503 503"],
  "GET /archive": ["200", "503"],
  "POST /archive": ["409", "503"],
  "GET /shared": ["401", "401"],
  "GET /exercises": ["200", "503"],
  "GET /ready-exercises": ["200", "503"],
  "POST /exercises": ["201", "503"],
  "GET /exercises/{id}": ["200 404", "503 503"],
  "PUT /exercises/{id}": ["200 404", "503 503"],
  "DELETE /exercises/{id}": ["204 404", "503 503"],
  "GET /exercises/{id}/hand-outs": ["200 404", "503 503"],
  "POST /exercises/{id}/hand-outs": ["201 404", "503 503"],
  "DELETE /hand-outs/{id}": ["204 404", "503 503"],
  "GET /attempts": ["200", "503"],
  "GET /attempts.csv": ["200", "503"],
  "GET /attempts/board": ["200", "503"],
  "GET /attempts/steps.csv": ["200", "503"],
  "GET /attempts/statements.json": ["200", "503"],
  "POST /attempts/statements": ["409", "503"],
  "POST /attempts": ["201", "201"],
  "GET /attempts/mine": ["200", "200"],
  "GET /attempts/{id}": ["200 404", "404 404"],
  "POST /attempts/{id}/checks": ["200 404", "404 404"],
  "POST /attempts/{id}/entries": ["200 404", "404 404"],
  "POST /attempts/{id}/orders": ["200 404", "404 404"],
  "POST /attempts/{id}/verdict": ["200 404", "404 404"],
  "GET /attempts/{id}/debrief": ["200 404", "404 404"],
  "GET /form": ["401", "401"],
  "POST /form/answers": ["401", "401"],
  "POST /form/words": ["401", "401"],
  "POST /form/photos": ["401", "401"],
  "POST /form/done": ["401", "401"],
  "DELETE /form/answers/{id}": ["401", "401"],
  // Last, as it ends this state.
  "POST /first-account": ["201", "403"],
};
const HERE = { host: "127.0.0.1:3000", origin: "http://127.0.0.1:3000", "x-forwarded-for": "127.0.0.1" };

describe("the table of access without accounts", () => {
  it("names every route, and no other", () => {
    expect(Object.keys(WITHOUT_ACCOUNTS).sort()).toEqual(ROUTES.map(nameOf).sort());
  });
});

for (const [column, place, env] of [
  [0, "at the machine itself", { CORNERWISE_BOUND: "loopback" }],
  [1, "on the network", {}],
] as const) {
  forEachStore(`access without accounts, ${place}`, (databases) => {
    const held = desk(databases, env);
    beforeAll(async () => {
      await keepCase(held.store, "stays", null);
      await handOut(held.store, "handed", null);
    });

    it.each(Object.entries(WITHOUT_ACCOUNTS))("%s", async (name, columns) => {
      const expected = columns[column].split(" ").map(Number);
      const route = ROUTES.find((one) => nameOf(one) === name) as Route;
      const ids = [fresh("case"), fresh("missing")].slice(0, expected.length);
      await keepCase(held.store, ids[0] ?? "", null);
      await handOut(held.store, ids[0] ?? "", null);
      await begin(held.store, ids[0] ?? "", "handed", { key: "nobody's" });
      const found: number[] = [];
      for (const id of ids) {
        const given = await goodCall(held.store, name, id);
        const response = await call(route, { ...given, headers: { ...given.headers, ...HERE } });
        await response.body?.cancel();
        found.push(response.status);
      }
      expect(found).toEqual(expected);
    });
  });
}

/** A call that nothing is wrong with, so that only access decides. */
async function goodCall(store: Store, name: string, id = "none"): Promise<Call> {
  const person = { name: "Invented Person", password: PASSWORD };
  switch (name) {
    case "POST /first-account":
      return { body: { ...person, email: "first@harbour-lane.example" } };
    case "POST /session":
      return { body: { email: "tilda@harbour-lane.example", password: PASSWORD } };
    case "PUT /password":
      return { body: { current: PASSWORD, next: `${PASSWORD} again` } };
    case "POST /accounts":
      return { body: { ...person, role: "trainee", email: `${fresh("new")}@harbour-lane.example` } };
    case "PATCH /accounts/{id}":
      return { params: { id: "tilda" }, body: { name: "Tilda" }, headers: { "if-match": "*" } };
    case "POST /cases/{id}/entries": {
      const opened = {
        ...note(id, "n1"),
        id: "o1",
        kind: "opened",
        release: "aaa",
        car: {},
        customer: "",
        vehicle: "",
      };
      const known = note(id, "n1");
      return { params: { id }, body: { entries: id.startsWith("missing") ? [opened] : [known] } };
    }
    case "POST /cases/{id}/links":
      return { params: { id }, body: { kind: "read", days: 7 } };
    case "DELETE /links/{id}": {
      if (id.startsWith("missing")) return { params: { id } };
      const link = { kind: "read", madeBy: null, madeAt: second(0), expiresAt: "2999-01-01T00:00:00.000Z" };
      await makeLink(store, { id: `link-${id}`, token: `${id}-${"x".repeat(20)}`, target: id, ...link });
      return { params: { id: `link-${id}` } };
    }
    case "POST /cases/{id}/photos":
      return { params: { id }, query: "?id=photo-of-it", body: await pngOf(4, 3) };
    case "GET /cases/{id}/photos/{photoId}":
      if (!id.startsWith("missing")) await keepOnePhoto(store, id);
      return { params: { id, photoId: "photo-of-it" } };
    case "POST /exercises":
      return { body: madeExercise() };
    case "PUT /exercises/{id}":
      return { params: { id }, body: madeExercise({ name: "Another" }), headers: { "if-match": "*" } };
    case "POST /exercises/{id}/hand-outs":
      return { params: { id }, body: { expiresAt: new Date(Date.now() + 86_400_000).toISOString() } };
    case "DELETE /hand-outs/{id}":
      return { params: { id: `hand-out-${id}` } };
    case "POST /attempts":
      return { body: { id: fresh("begun-here"), token: "token-of-handed", key: "k".repeat(32) } };
    case "POST /attempts/statements":
      return { body: {} };
    case "POST /attempts/{id}/checks":
      return { params: { id }, body: { id: "c1", check: "ask:noise:clunk", cautionsRead: true } };
    case "POST /attempts/{id}/entries":
      return { params: { id }, body: { entries: [note(id, "n1")] } };
    case "POST /attempts/{id}/orders":
      return { params: { id }, body: { id: "p1", repair: "anti-roll-bar-link@front-left" } };
    case "POST /attempts/{id}/verdict":
      return { params: { id }, body: { id: "v1", suspects: [], confidence: 0.5 } };
    case "POST /archive":
      return { body: await archiveOf(store) };
    case "DELETE /cases/{id}":
      return { params: { id }, headers: { "if-match": '"1"' } };
    default:
      return { params: { id } };
  }
}

function keepOnePhoto(store: Store, caseId: string): Promise<unknown> {
  const size = { width: 4, height: 3 };
  const head = { id: "photo-of-it", caseId, at: second(2), by: "ben" };
  return keepPhoto(store, {
    ...{ caseId, id: head.id, linkId: null, accountId: null, ownerId: null, now: second(2) },
    picture: { ...size, bytes: new Uint8Array([0xff, 0xd8]) },
    entry: { ...head, kind: "photo", photo: head.id, ...size },
  });
}

/** The whole desk as an archive. */
async function archiveOf(store: Store): Promise<Uint8Array> {
  const pieces: Uint8Array[] = [];
  for await (const piece of writeArchive(store, second(0))) pieces.push(piece);
  return Buffer.concat(pieces);
}
