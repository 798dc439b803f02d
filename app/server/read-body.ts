import { CASE_LIMITS } from "../../lib/case/case-file.ts";
import { readJson } from "../../lib/case/read-json.ts";
import { CornerwiseError } from "../../lib/errors.ts";
import { ApiProblem } from "./problem.ts";

/** Longest JSON body, bytes. */
export const LONGEST_JSON = 1_000_000;

function tooLarge(
  limit: number,
  mend = "Send it in several requests, or leave out what is not needed.",
): ApiProblem {
  return new ApiProblem("too-large", `The body is longer than ${limit} bytes. ${mend}`);
}

/** The body's media type without parameters, in small letters. */
const mediaTypeOf = (request: Request): string =>
  (request.headers.get("content-type") ?? "").split(";")[0]?.trim().toLowerCase() ?? "";

/**
 * The body of a request, read to its end or to `limit` bytes.
 *
 * Shape   mend: what to do about one that is longer, where it is not the usual.
 * Errors  wrong-media-type; too-large as soon as it is known.
 */
export async function readBytes(
  request: Request,
  mediaType: string,
  limit: number,
  mend?: string,
): Promise<Uint8Array> {
  if (mediaTypeOf(request) !== mediaType) {
    throw new ApiProblem("wrong-media-type", `Send the body as ${mediaType}.`, {
      headers: { accept: mediaType },
    });
  }
  if (Number(request.headers.get("content-length") ?? 0) > limit) throw tooLarge(limit, mend);
  const chunks: Uint8Array[] = [];
  let length = 0;
  const reader = request.body?.getReader();
  for (let read = await reader?.read(); read !== undefined && !read.done; read = await reader?.read()) {
    length += read.value.byteLength;
    if (length > limit) {
      await reader?.cancel();
      throw tooLarge(limit, mend);
    }
    chunks.push(read.value);
  }
  const bytes = new Uint8Array(length);
  let at = 0;
  for (const chunk of chunks) {
    bytes.set(chunk, at);
    at += chunk.byteLength;
  }
  return bytes;
}

/**
 * The JSON of a body.
 *
 * Errors  as readBytes; bad-json: not UTF-8, not JSON, or nested too deep.
 */
export async function readJsonBody(request: Request): Promise<unknown> {
  const bytes = await readBytes(request, "application/json", LONGEST_JSON);
  try {
    const text = new TextDecoder("utf-8", { fatal: true }).decode(bytes);
    return readJson(text, { characters: LONGEST_JSON, depth: CASE_LIMITS.depth });
  } catch (error) {
    const reason = error instanceof CornerwiseError ? error.message : "It is not UTF-8.";
    throw new ApiProblem("bad-json", `The body cannot be read. ${reason}`);
  }
}
