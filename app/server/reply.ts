import type { CaseHead } from "../../lib/store/index.ts";

/** JSON with its version as ETag. */
export function json(body: unknown, version?: number, init: ResponseInit = {}): Response {
  const response = Response.json(body, init);
  if (version !== undefined) response.headers.set("etag", etagOf(version));
  return response;
}

/** A strong validator (RFC 9110, 8.8.3): the version in quotes, a number, or the id of what never changes. */
export const etagOf = (version: number | string): string => `"${version}"`;

export const nothing = (): Response => new Response(null, { status: 204 });

/** A file to be kept, never shown as a page. */
export function download(
  body: BodyInit,
  name: string,
  mediaType: string,
  headers: Record<string, string> = {},
): Response {
  return new Response(body, {
    headers: {
      "content-type": mediaType,
      // The name is made of an id: letters, digits, hyphens, underscores.
      "content-disposition": `attachment; filename="${name}"`,
      ...headers,
    },
  });
}

const TAG = /(W\/)?"([\x21\x23-\x7e\x80-\xff]*)"/g;

/**
 * The versions that an If-Match header names; undefined when it takes any.
 *
 * Source  RFC 9110, 13.1.1: strong comparison, so a weak tag never matches.
 */
export function matchVersions(header: string): readonly number[] | undefined {
  if (header.trim() === "*") return undefined;
  return [...header.matchAll(TAG)].flatMap(([, weak, tag]) =>
    weak === undefined && /^\d{1,15}$/.test(tag ?? "") ? [Number(tag)] : [],
  );
}

/** Whether If-None-Match names this version: weak comparison (RFC 9110, 13.1.2). */
export function isKnown(request: Request, version: number | string): boolean {
  const header = request.headers.get("if-none-match");
  if (header === null) return false;
  return header.trim() === "*" || [...header.matchAll(TAG)].some(([, , tag]) => tag === String(version));
}

/** Nothing new: the asker has this version. */
export const unchanged = (version: number): Response =>
  new Response(null, { status: 304, headers: { etag: etagOf(version) } });

/** The head of a case as routes give it. */
export function headJson({ removedAt: _, ...head }: CaseHead): Omit<CaseHead, "removedAt"> {
  return head;
}
