import { randomBytes } from "node:crypto";
import { openLink, type Store } from "../../lib/store/index.ts";
import { ApiProblem } from "./problem.ts";

/** 192 bits. */
const TOKEN_BYTES = 24;

const BEARER = /^Bearer ([A-Za-z0-9_-]{32})$/i;

/** Kind of link that opens a case to read. */
export const READ_CASE = "read";

/** A token that nobody can guess: 32 letters, digits, hyphens and underscores. */
export const newToken = (): string => randomBytes(TOKEN_BYTES).toString("base64url");

/** The token that a request carries; undefined when it carries none of our form. */
export const tokenOf = (request: Request): string | undefined =>
  BEARER.exec(request.headers.get("authorization") ?? "")?.[1];

export const linkOver = (): ApiProblem =>
  new ApiProblem("link-over", "It was ended, has run out, or is not whole. Ask the workshop for a new one.");

/**
 * The case that a request's token opens; looked up by the token's hash, so that the time taken says nothing about it.
 *
 * Errors  ApiProblem link-over: unknown, expired, revoked or for something else; the four look alike.
 */
export async function sharedCase(store: Store, request: Request, now: string): Promise<string> {
  const token = tokenOf(request);
  const link = token === undefined ? undefined : await openLink(store, token, now);
  if (link?.kind === READ_CASE) return link.target;
  throw linkOver();
}
