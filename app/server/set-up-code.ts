import { randomBytes, randomUUID } from "node:crypto";
import { listLinks, makeLink, openLink, revokeLink, type Store } from "../../lib/store/index.ts";

const KIND = "set-up";
const TARGET = "first-account";
/** After that a restart prints another one. */
const VALID_MS = 86_400_000;
/** Five bits each: 160 bits. */
const LETTERS = 32;
/** Source  RFC 4648, 6: base 32 has no letters that are taken for digits once 0, 1 and 8 are read as O, I and B. */
const ALPHABET = "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567";

/** The code without what people add or mistake when they type it. */
function typed(code: string): string {
  return code
    .toUpperCase()
    .replaceAll("0", "O")
    .replaceAll("1", "I")
    .replaceAll("8", "B")
    .replaceAll(/[^A-Z2-7]/g, "");
}

/**
 * A new code for making the first account, in groups of four; only its hash is kept.
 *
 * Every instance that starts makes one of its own, and each of them is good.
 */
export async function makeSetUpCode(store: Store, now: Date): Promise<string> {
  // 32 letters: the remainder of a byte by 32 favours none of them.
  const code = Array.from(randomBytes(LETTERS), (byte) => ALPHABET[byte % ALPHABET.length]).join("");
  await makeLink(store, {
    id: randomUUID(),
    token: code,
    kind: KIND,
    target: TARGET,
    madeBy: null,
    madeAt: now.toISOString(),
    expiresAt: new Date(now.getTime() + VALID_MS).toISOString(),
  });
  return code.replaceAll(/(.{4})(?=.)/g, "$1-");
}

/** Whether this is one of the codes; looked up by its hash, so that the time taken says nothing about it. */
export async function isSetUpCode(store: Store, code: string, now: string): Promise<boolean> {
  const link = await openLink(store, typed(code), now);
  return link?.kind === KIND && link.target === TARGET;
}

/** The first account is there: no code is of use any more. */
export async function endSetUpCodes(store: Store, now: string): Promise<void> {
  for (const { id } of await listLinks(store, TARGET)) await revokeLink(store, id, now);
}
