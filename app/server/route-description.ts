import type { z } from "zod";
import type { Action } from "./access.ts";
import type { ProblemCode } from "./problem.ts";

/** What a route gives when all went well. */
export interface Gives {
  readonly status: 200 | 201 | 204;
  readonly what: string;
  /** JSON of this form; left out: see `mediaType`, or nothing at all. */
  readonly body?: z.ZodType;
  /** Another media type than JSON. */
  readonly mediaType?: string;
  /** Headers that it carries, with what they say. */
  readonly headers?: Readonly<Record<string, string>>;
}

/**
 * What is known of a route without looking at its code: the reading of requests, the access check and the document all go by it.
 */
export interface Route {
  readonly method: "GET" | "POST" | "PUT" | "PATCH" | "DELETE";
  /** As in OpenAPI: /api/v1/cases/{id}. */
  readonly path: string;
  readonly action: Action;
  readonly summary: string;
  /** What is in braces in the path. */
  readonly params?: z.ZodType<object>;
  /** Which problem an impossible parameter is: the thing cannot be there. */
  readonly missing?: ProblemCode;
  readonly query?: z.ZodType<object>;
  readonly body?: z.ZodType;
  /** A body of bytes instead of JSON. */
  readonly bytes?: {
    readonly mediaType: string;
    readonly limit: number;
    /** What to do about a body that is longer. */
    readonly mend?: string;
  };
  /** Whether the change needs `If-Match` with the version that it was made on. */
  readonly ifMatch?: true;
  /** How the asker shows who they are, where it is not the session. */
  readonly token?: true;
  readonly gives: Gives;
  /** Problems beyond those that every route of its kind has. */
  readonly problems?: readonly ProblemCode[];
}

/** Keeps the exact type, so that handlers know what they are given. */
export function route<const R extends Route>(description: R): R {
  return description;
}

type Read<T> = T extends z.ZodType ? z.output<T> : undefined;

export type ParamsOf<R extends Route> = Read<R["params"]>;
export type QueryOf<R extends Route> = Read<R["query"]>;
export type BodyOf<R extends Route> = R["bytes"] extends object ? Uint8Array : Read<R["body"]>;

/** Writes change something: they need our own origin. */
export const isWrite = ({ method }: Pick<Route, "method">): boolean => method !== "GET";
