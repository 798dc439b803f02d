import { afterAll, beforeAll } from "vitest";
import { join } from "node:path";
import { ROUTES } from "../../app/server/routes/index.ts";
import type { Route } from "../../app/server/route-description.ts";
import { Problem } from "../../app/server/schemas/common.ts";
import { hashPassword } from "../../app/server/password.ts";
import type { Role } from "../../app/server/principal.ts";
import { closeServer, openServer } from "../../app/server/server.ts";
import { appendEntries, makeAccount, type Store } from "../../lib/store/index.ts";
import { opening, second } from "../support/made-entries.ts";
import type { Databases } from "../support/stores.ts";

const ROOT = join(import.meta.dirname, "../..");

/** Host under which the tests call the server. */
export const HOST = "desk.example";
export const ORIGIN = `http://${HOST}`;
export const PASSWORD = "correct horse battery staple";

type RouteHandler = (
  request: Request,
  context: { params: Promise<Record<string, string>> },
) => Promise<Response>;

/** File of a route, below the root of the repository. */
export const fileOf = ({ path }: Pick<Route, "path">): string =>
  `app${path.replaceAll(/\{(\w+)\}/g, "[$1]")}/route.ts`;

async function handlerOf(route: Route): Promise<RouteHandler> {
  const file: Record<string, RouteHandler> = await import(join(ROOT, fileOf(route)));
  const handler = file[route.method];
  if (handler === undefined) throw new Error(`${fileOf(route)} has no ${route.method}`);
  return handler;
}

export interface Call {
  /** Cookie header. */
  readonly as?: string;
  /** What stands in place of the parameters of the path. */
  readonly params?: Readonly<Record<string, string>>;
  readonly query?: string;
  /** Sent as JSON; a string or bytes as they are. */
  readonly body?: unknown;
  readonly headers?: Readonly<Record<string, string>>;
  readonly signal?: AbortSignal;
}

function bodyOf(body: unknown): BodyInit | undefined {
  if (body === undefined || typeof body === "string" || body instanceof Uint8Array) return body as BodyInit;
  return JSON.stringify(body);
}

/** Text without halves of characters, which no address can hold. */
export const wellFormed = (text: string): string => text.replaceAll(/[\ud800-\udfff]/gu, "\ufffd");

/** Calls a route as the framework would, from a page of our own; its answer is held to its description. */
export async function call(route: Route, given: Call = {}): Promise<Response> {
  const { as, params = {}, query = "", body, headers = {}, signal } = given;
  const path = route.path.replaceAll(/\{(\w+)\}/g, (_, name: string) =>
    encodeURIComponent(wellFormed(params[name] ?? "")),
  );
  const sent = new Headers({ host: HOST, origin: ORIGIN, "x-forwarded-for": "10.0.0.7" });
  if (as !== undefined) sent.set("cookie", as);
  if (body !== undefined) sent.set("content-type", route.bytes?.mediaType ?? "application/json");
  for (const [name, value] of Object.entries(headers)) sent.set(name, value);
  const request = new Request(`${ORIGIN}${path}${query}`, {
    method: route.method,
    headers: sent,
    ...(body !== undefined && { body: bodyOf(body) ?? null }),
    ...(signal !== undefined && { signal }),
  });
  const handler = await handlerOf(route);
  const response = await handler(request, { params: Promise.resolve({ ...params }) });
  await holdToDescription(route, response);
  return response;
}

async function holdToDescription(route: Route, response: Response): Promise<void> {
  if (response.status >= 400) {
    Problem.parse(await response.clone().json());
    return;
  }
  if (response.status === 304) return;
  const { status, body } = route.gives;
  if (response.status !== status) throw new Error(`${route.method} ${route.path} gave ${response.status}`);
  if (body !== undefined) body.parse(await response.clone().json());
}

/** The JSON of an answer. */
export async function jsonOf<T>(answer: Promise<Response> | Response): Promise<T> {
  return (await (await answer).json()) as T;
}

/** The Cookie header that a browser would send after this answer. */
export function cookieOf(response: Response): string {
  return response.headers
    .getSetCookie()
    .map((cookie) => cookie.split(";")[0] ?? "")
    .join("; ");
}

/** Description of a route by method and path. */
export function routeOf(method: Route["method"], path: string): Route {
  const found = ROUTES.find((route) => route.method === method && route.path === `/api/v1${path}`);
  if (found === undefined) throw new Error(`no route ${method} ${path}`);
  return found;
}

export interface Person {
  readonly id: string;
  readonly role: Role;
  readonly email: string;
  readonly cookie: string;
}

let hashed: Promise<string> | undefined;

/** Makes an account and signs in with it. */
export async function signedIn(store: Store, id: string, role: Role): Promise<Person> {
  hashed ??= hashPassword(PASSWORD);
  const email = `${id}@harbour-lane.example`;
  await makeAccount(store, { id, name: id, email, role, passwordHash: await hashed, now: second(0) });
  const response = await call(routeOf("POST", "/session"), { body: { email, password: PASSWORD } });
  return { id, role, email, cookie: cookieOf(response) };
}

/** Keeps a new case of this owner. */
export async function keepCase(store: Store, caseId: string, ownerId: string | null): Promise<void> {
  await appendEntries(store, {
    caseId,
    entries: [opening(caseId)],
    accountId: ownerId,
    ownerId,
    now: second(0),
  });
}

/** Opens a server on an empty database before the tests of the block, and ends it after them. */
export function desk(databases: Databases, env: Record<string, string> = {}): { store: Store } {
  const held = {} as { store: Store };
  beforeAll(async () => {
    await closeServer();
    for (const name of Object.keys(process.env)) if (name.startsWith("CORNERWISE_")) delete process.env[name];
    Object.assign(process.env, env, { CORNERWISE_DATABASE: await databases.fresh() });
    held.store = (await openServer()).store;
  });
  afterAll(closeServer);
  return held;
}
