import type { z } from "zod";
import { verdictOn } from "./access.ts";
import { problemOf } from "./failure.ts";
import { type Asker, identify } from "./identify.ts";
import { ApiProblem, type ProblemCode, problemResponse } from "./problem.ts";
import { readBytes, readJsonBody } from "./read-body.ts";
import { type BodyOf, isWrite, type ParamsOf, type QueryOf, type Route } from "./route-description.ts";
import { isSameOrigin } from "./same-origin.ts";
import { openServer, type Server } from "./server.ts";

/** What a handler is given: everything checked. */
export interface Asked<R extends Route> extends Asker {
  readonly server: Server;
  readonly request: Request;
  readonly params: ParamsOf<R>;
  readonly query: QueryOf<R>;
  readonly body: BodyOf<R>;
  /** The moment of the request, ISO 8601, UTC. */
  readonly now: string;
}

export type Handler<R extends Route> = (asked: Asked<R>) => Promise<Response> | Response;

/** Opens what a token stands for: before anything that was sent is read. */
export type Opener<K> = (server: Server, request: Request, now: string) => Promise<K>;

/** What the framework hands over beside the request. */
interface Context {
  readonly params: Promise<Record<string, string | string[] | undefined>>;
}

/**
 * A route handler of the framework: checks origin, asker, access and input by the route's description, in this order, and
 * turns whatever goes wrong into a problem.
 */
export function serve<R extends Route>(route: R, handle: Handler<R>) {
  return serveOpened(route, handle, () => Promise.resolve(undefined));
}

/** As serve, for routes whose asker holds a token: what it opens is looked up first and handed on. */
export function serveOpened<R extends Route, K>(
  route: R,
  handle: (asked: Asked<R>, opened: K) => Promise<Response> | Response,
  open: Opener<K>,
) {
  return async (request: Request, context?: Context): Promise<Response> => {
    let response: Response;
    try {
      response = await answer(route, handle, open, request, context);
    } catch (error) {
      response = problemResponse(problemOf(error));
    }
    // Answers are for the one who asked. What browsers may do with them is said once for the whole site.
    if (!response.headers.has("cache-control")) response.headers.set("cache-control", "no-store");
    return response;
  };
}

async function answer<R extends Route, K>(
  route: R,
  handle: (asked: Asked<R>, opened: K) => Promise<Response> | Response,
  open: Opener<K>,
  request: Request,
  context: Context | undefined,
): Promise<Response> {
  const server = await openServer();
  if (isWrite(route) && !isSameOrigin(request.headers, server.config.origin)) {
    throw new ApiProblem(
      "other-origin",
      "Changes are taken from this server's own pages only: send an Origin header that names this server.",
    );
  }
  const asker = await identify(server, request);
  await refuse(route, server, asker);
  const now = new Date().toISOString();
  const opened = await open(server, request, now);
  const params = read(route.params, await context?.params, route.missing ?? "bad-input");
  const query = read(route.query, queryOf(request), "bad-input");
  if (route.ifMatch === true && !request.headers.has("if-match")) {
    throw new ApiProblem("version-needed", "Read it first, and send its ETag as If-Match with the change.");
  }
  const body =
    route.bytes !== undefined
      ? await readBytes(request, route.bytes.mediaType, route.bytes.limit, route.bytes.mend)
      : route.body !== undefined
        ? read(route.body, await readJsonBody(request), "bad-input")
        : undefined;
  const asked: Asked<R> = {
    ...asker,
    server,
    request,
    params: params as ParamsOf<R>,
    query: query as QueryOf<R>,
    body: body as BodyOf<R>,
    now,
  };
  return handle(asked, opened);
}

async function refuse(route: Route, server: Server, { principal }: Asker): Promise<void> {
  const verdict = verdictOn(route.action, principal);
  if (verdict === "forbidden") throw forbidden();
  if (verdict !== "sign-in-needed") return;
  if (await server.hasAccounts()) throw new ApiProblem("sign-in-needed", "Sign in, then ask again.");
  throw new ApiProblem(
    "no-owner-yet",
    "Nobody has an account here yet. Make the first one with the set-up code on the server's console.",
  );
}

export const forbidden = (): ApiProblem =>
  new ApiProblem("forbidden", "Your account may not do this. Ask the workshop's owner.");

/** The query as an object; a name that comes twice is kept as a list, which no schema takes. */
function queryOf(request: Request): Record<string, string | string[]> {
  const { searchParams } = new URL(request.url);
  const names = [...new Set(searchParams.keys())];
  return Object.fromEntries(
    names.map((name) => {
      const values = searchParams.getAll(name);
      return [name, values.length === 1 ? (values[0] ?? "") : values];
    }),
  );
}

function read(schema: z.ZodType | undefined, value: unknown, code: ProblemCode): unknown {
  if (schema === undefined) return undefined;
  const parsed = schema.safeParse(value);
  if (parsed.success) return parsed.data;
  const fields = parsed.error.issues.map(({ path, message }) => ({
    path: path.map(String).join("."),
    message,
  }));
  const [first] = fields;
  const where = first === undefined || first.path === "" ? "" : `${first.path}: `;
  if (code !== "bad-input") throw new ApiProblem(code, "Nothing has this id. Ask for one that a list gave.");
  throw new ApiProblem(
    code,
    `It cannot be taken in. ${where}${first?.message ?? "It does not follow its form"}. Mend it and send it again.`,
    { fields: fields.slice(0, MOST_FIELDS) },
  );
}

/** More would not help anybody to mend it. */
const MOST_FIELDS = 50;
