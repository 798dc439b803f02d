import { createHash } from "node:crypto";

/** Made once at random: our texts give other UUIDs than the same texts of another program. */
const OURS = "daa11188-aa51-490e-a0a1-0aa4d49fe866";

/**
 * A UUID that follows from a text, version 5.
 *
 * Source  RFC 9562, 5.5.
 */
export function uuidOfText(text: string, namespace = OURS): string {
  const digest = createHash("sha1")
    .update(Buffer.from(namespace.replaceAll("-", ""), "hex"))
    .update(text)
    .digest()
    .subarray(0, 16);
  digest.writeUInt8((digest.readUInt8(6) & 0x0f) | 0x50, 6);
  digest.writeUInt8((digest.readUInt8(8) & 0x3f) | 0x80, 8);
  const hex = digest.toString("hex");
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join("-");
}
