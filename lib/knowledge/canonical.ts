import { CornerwiseError } from "../errors.ts";

/**
 * JSON text that is the same for equal values: keys sorted, no spaces, absent and undefined fields alike.
 *
 * Errors  "bad-record" for a value that JSON cannot hold (NaN, infinity, a function).
 * @example canonicalJson({ b: 1, a: [2] }) // '{"a":[2],"b":1}'
 */
export function canonicalJson(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonicalJson).join(",")}]`;
  if (typeof value === "object" && value !== null) {
    const entries = Object.entries(value)
      .filter(([, member]) => member !== undefined)
      .sort(([a], [b]) => (a < b ? -1 : 1));
    return `{${entries.map(([key, member]) => `${JSON.stringify(key)}:${canonicalJson(member)}`).join(",")}}`;
  }
  const holds =
    value === null ||
    typeof value === "string" ||
    typeof value === "boolean" ||
    (typeof value === "number" && Number.isFinite(value));
  if (!holds) {
    throw new CornerwiseError(
      "bad-record",
      `JSON cannot hold ${typeof value === "number" ? value : `a ${typeof value}`}. Give a finite number, text, true, false or null.`,
    );
  }
  return JSON.stringify(value);
}

/** SHA-256 of bytes; Web Crypto: `(bytes) => crypto.subtle.digest("SHA-256", bytes)`. */
export type Sha256 = (bytes: Uint8Array<ArrayBuffer>) => Promise<ArrayBuffer>;

/**
 * SHA-256 of a text's UTF-8 bytes as 64 lower-case hexadecimal digits.
 *
 * The digest is passed in, because Web Crypto is not there on every page.
 */
export async function sha256Hex(text: string, digest: Sha256): Promise<string> {
  const hash = new Uint8Array(await digest(Uint8Array.from(new TextEncoder().encode(text))));
  return [...hash].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}
