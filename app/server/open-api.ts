import { z } from "zod";
import { ACCESS } from "./access.ts";
import { PROBLEM_TYPE, PROBLEMS, type ProblemCode } from "./problem.ts";
import { isWrite, type Route } from "./route-description.ts";
import { Entry, EntryInput } from "./schemas/cases.ts";
import { Problem } from "./schemas/common.ts";

type Json = Record<string, unknown>;

const DEFS = "#/$defs/";
const COMPONENTS = "#/components/schemas/";

/** Points what zod refers to within one schema at the document's components. */
function pointed(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(pointed);
  if (value === null || typeof value !== "object") return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, inner]) => [
      key,
      key === "$ref" && typeof inner === "string" ? inner.replace(DEFS, COMPONENTS) : pointed(inner),
    ]),
  );
}

/** A zod schema as JSON Schema 2020-12; named parts of it go to `components`. */
function schemaOf(schema: z.ZodType, io: "input" | "output", components: Map<string, unknown>): Json {
  const made = z.toJSONSchema(schema, {
    io,
    unrepresentable: "any",
    override: ({ zodSchema, jsonSchema }) => {
      if (zodSchema === (EntryInput as unknown)) jsonSchema.$ref = `${COMPONENTS}Entry`;
    },
  });
  const { $schema: _schema, $defs: defs = {}, ...rest } = made as Json & { $defs?: Json };
  const { id } = schema.meta() ?? {};
  for (const [name, part] of Object.entries(defs)) components.set(name, withoutId(pointed(part)));
  if (id === undefined) return pointed(rest) as Json;
  components.set(id, withoutId(pointed(rest)));
  return { $ref: `${COMPONENTS}${id}` };
}

/** The name stands as the component's key; as a keyword of the schema it would mean nothing. */
function withoutId(part: unknown): unknown {
  const { id: _id, ...rest } = part as Json;
  return rest;
}

function parametersOf(route: Route, components: Map<string, unknown>): Json[] {
  const listed = (schema: z.ZodType | undefined, where: "path" | "query"): Json[] => {
    if (schema === undefined) return [];
    const { properties = {}, required = [] } = schemaOf(schema, "output", components) as {
      properties?: Record<string, Json>;
      required?: string[];
    };
    return Object.entries(properties).map(([name, { description, ...inner }]) => ({
      name,
      in: where,
      required: where === "path" || required.includes(name),
      ...(description !== undefined && { description }),
      schema: name === "closed" ? { enum: ["0", "1"] } : inner,
    }));
  };
  const match: Json = {
    name: "If-Match",
    in: "header",
    required: true,
    description: "The ETag of the version that the change was made on.",
    schema: { type: "string" },
  };
  return [
    ...listed(route.params, "path"),
    ...listed(route.query, "query"),
    ...(route.ifMatch === true ? [match] : []),
  ];
}

/** Every problem that a route can answer with. */
export function problemsOf(route: Route): ProblemCode[] {
  const open = ACCESS[route.action] === "open";
  const codes: ProblemCode[] = [
    "server-fault",
    "unreachable",
    "not-configured",
    ...(open ? [] : (["sign-in-needed", "no-owner-yet", "forbidden"] as const)),
    ...(isWrite(route) ? (["other-origin", "disk-full", "read-only"] as const) : []),
    ...(route.body === undefined
      ? []
      : (["bad-json", "too-large", "wrong-media-type", "bad-input"] as const)),
    ...(route.bytes === undefined ? [] : (["too-large", "wrong-media-type"] as const)),
    ...(route.query === undefined ? [] : (["bad-input"] as const)),
    ...(route.missing === undefined ? [] : [route.missing]),
    ...(route.ifMatch === true ? (["version-needed", "changed-meanwhile"] as const) : []),
    ...(route.problems ?? []),
  ];
  return [...new Set(codes)];
}

function responsesOf(route: Route, components: Map<string, unknown>): Json {
  const { status, what, body, mediaType, headers = {} } = route.gives;
  const content =
    body !== undefined
      ? { "application/json": { schema: schemaOf(body, "output", components) } }
      : mediaType !== undefined
        ? { [mediaType]: {} }
        : undefined;
  const good = {
    description: what,
    ...(Object.keys(headers).length > 0 && {
      headers: Object.fromEntries(
        Object.entries(headers).map(([name, description]) => [
          name,
          { description, schema: { type: "string" } },
        ]),
      ),
    }),
    ...(content !== undefined && { content }),
  };
  const bad = new Map<number, ProblemCode[]>();
  for (const code of problemsOf(route)) {
    const alike = bad.get(PROBLEMS[code][0]) ?? [];
    bad.set(PROBLEMS[code][0], [...alike, code]);
  }
  return {
    [status]: good,
    ...Object.fromEntries(
      [...bad].map(([problemStatus, codes]) => [
        problemStatus,
        {
          description: codes.map((code) => `${code}: ${PROBLEMS[code][1]}`).join("; "),
          content: { [PROBLEM_TYPE]: { schema: { $ref: `${COMPONENTS}Problem` } } },
        },
      ]),
    ),
  };
}

function bodyOf(route: Route, components: Map<string, unknown>): Json {
  if (route.bytes !== undefined) {
    return { requestBody: { required: true, content: { [route.bytes.mediaType]: {} } } };
  }
  if (route.body === undefined) return {};
  const schema = schemaOf(route.body, "input", components);
  return { requestBody: { required: true, content: { "application/json": { schema } } } };
}

/** Name of the operation: its method and what its path names. */
function operationId({ method, path }: Route): string {
  const words = path.replace("/api/v1/", "").split(/[^a-z]+/i);
  return [
    method.toLowerCase(),
    ...words.filter((word) => word !== "").map((word) => word.toLowerCase()),
  ].join("-");
}

function operation(route: Route, components: Map<string, unknown>): Json {
  const parameters = parametersOf(route, components);
  const security =
    route.token === true ? [{ link: [] }] : ACCESS[route.action] === "open" ? [] : [{ session: [] }];
  return {
    operationId: operationId(route),
    summary: route.summary,
    security,
    ...(parameters.length > 0 && { parameters }),
    ...bodyOf(route, components),
    responses: responsesOf(route, components),
  };
}

/** The OpenAPI 3.1 document of these routes, made from the schemas that read their requests. */
export function apiDocument(routes: readonly Route[], version: string): Json {
  const components = new Map<string, unknown>();
  schemaOf(Problem, "output", components);
  schemaOf(Entry, "input", components);
  const paths: Record<string, Json> = {};
  for (const route of routes) {
    (paths[route.path] ??= {})[route.method.toLowerCase()] = operation(route, components);
  }
  return {
    openapi: "3.1.0",
    info: {
      title: "Cornerwise",
      version,
      description:
        "Writes need `Content-Type: application/json` and an `Origin` header of this server. Entries carry ids made where they were written: sending them again changes nothing.",
    },
    paths,
    components: {
      securitySchemes: {
        session: { type: "apiKey", in: "cookie", name: "cornerwise.session_token" },
        link: { type: "http", scheme: "bearer", description: "The token of a link." },
      },
      schemas: Object.fromEntries(components),
    },
  };
}
