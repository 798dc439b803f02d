/** What the server said, or that it said nothing. */
export type Reply =
  | { readonly is: "lost" }
  | {
      readonly is: "reply";
      readonly status: number;
      /** Undefined when the reply was no JSON: then it was not our server that spoke. */
      readonly json: unknown;
      readonly problem?: Problem;
      /** How long it asks to be left alone, in milliseconds. */
      readonly retryAfterMs?: number;
      readonly etag?: string;
    };

/** A problem as RFC 9457 describes it, its type cut down to our short name. */
export interface Problem {
  readonly code: string;
  readonly title: string;
  readonly detail?: string;
  readonly fields: readonly { readonly path: string; readonly message: string }[];
}

export interface Ask {
  readonly method: "GET" | "POST" | "PUT" | "PATCH" | "DELETE";
  /** Below the server's own address: "/api/v1/me". */
  readonly path: string;
  readonly body?: unknown;
  /** Sent as it is, instead of a body of JSON. */
  readonly file?: Blob;
  readonly ifMatch?: string;
  readonly bearer?: string;
}

/** The way to the server; never throws. */
export interface Door {
  ask(ask: Ask): Promise<Reply>;
}

/** A server that is slower than this is taken as lost; the same is asked again later. */
const PATIENCE_MS = 20_000;
/** A photo of a few megabytes takes minutes over a slow line. */
const PATIENCE_WITH_FILE_MS = 300_000;

/** The server that this page came from. */
export const serverDoor: Door = {
  async ask({ method, path, body, file, ifMatch, bearer }) {
    try {
      const response = await fetch(path, {
        method,
        cache: "no-store",
        signal: AbortSignal.timeout(file === undefined ? PATIENCE_MS : PATIENCE_WITH_FILE_MS),
        headers: {
          accept: "application/json",
          ...(body !== undefined && { "content-type": "application/json" }),
          ...(file !== undefined && { "content-type": "application/octet-stream" }),
          ...(ifMatch !== undefined && { "if-match": ifMatch }),
          ...(bearer !== undefined && { authorization: `Bearer ${bearer}` }),
        },
        ...(body !== undefined && { body: JSON.stringify(body) }),
        ...(file !== undefined && { body: file }),
      });
      return replyOf(response.status, response.headers, await response.text());
    } catch {
      return { is: "lost" };
    }
  },
};

/** Reads a reply; a body that is no JSON is kept out. */
export function replyOf(status: number, headers: Headers, text: string): Reply {
  const isJson = /^application\/(\w+\+)?json\b/.test(headers.get("content-type") ?? "");
  const json = isJson ? parsed(text) : status === 204 ? null : undefined;
  const problem = status >= 400 ? problemOf(json) : undefined;
  const retryAfterMs = waitOf(headers.get("retry-after"));
  const etag = headers.get("etag");
  return {
    is: "reply",
    status,
    json,
    ...(problem !== undefined && { problem }),
    ...(retryAfterMs !== undefined && { retryAfterMs }),
    ...(etag !== null && { etag }),
  };
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch {
    return undefined;
  }
}

function problemOf(json: unknown): Problem | undefined {
  if (json === null || typeof json !== "object") return undefined;
  const { type, title, detail, fields } = json as Record<string, unknown>;
  const code = typeof type === "string" ? /\/problems\/([\w-]+)$/.exec(type)?.[1] : undefined;
  if (code === undefined) return undefined;
  return {
    code,
    title: typeof title === "string" ? title : "",
    ...(typeof detail === "string" && { detail }),
    fields: Array.isArray(fields) ? fields.filter(isField) : [],
  };
}

function isField(value: unknown): value is Problem["fields"][number] {
  return (
    value !== null &&
    typeof value === "object" &&
    typeof (value as { path?: unknown }).path === "string" &&
    typeof (value as { message?: unknown }).message === "string"
  );
}

/** Retry-After in seconds (RFC 9110, 10.2.3); the form with a date is not used by our server. */
function waitOf(header: string | null): number | undefined {
  const seconds = header === null ? Number.NaN : Number(header);
  return Number.isFinite(seconds) && seconds >= 0 ? seconds * 1000 : undefined;
}
