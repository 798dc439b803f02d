import { createHash } from "node:crypto";
import { forgetAttempts, type Store, takeAttempt } from "../../lib/store/index.ts";
import { ApiProblem } from "./problem.ts";

const WINDOW_MS = 15 * 60_000;
/** Wrong passwords in one window, far below the 100 in a row that NIST SP 800-63B allows for an account. */
export const MOST_FOR_ONE_ACCOUNT = 10;
/** More than for one account: a whole workshop may share an address. */
export const MOST_FROM_ONE_ADDRESS = 60;

/** Codes of exercises typed from one address: a whole class may share it, and a code has 39 bits. */
const MOST_CODES = 150;
/** Uses of one form in one window: a customer who reads slowly and goes back often needs a fifth of it. */
export const MOST_FORM_USES = 300;
/** Photos sent by one form in one window, those that cannot be taken included. */
export const MOST_FORM_PHOTOS = 40;

/** What was typed as an address may be a password by mistake: only its hash is kept. */
const accountKey = (email: string): string =>
  `account:${createHash("sha256").update(email.toLowerCase()).digest("hex")}`;

/** Errors  too-many-tries. */
async function take(store: Store, key: string, most: number): Promise<void> {
  const waitMs = await takeAttempt(store, { key, now: Date.now(), windowMs: WINDOW_MS, most });
  if (waitMs === 0) return;
  const seconds = Math.ceil(waitMs / 1000);
  throw new ApiProblem("too-many-tries", `Wait ${Math.ceil(seconds / 60)} minutes, then try again.`, {
    headers: { "retry-after": String(seconds) },
  });
}

/**
 * Counts a try at a password or code, for the address that it came from and for the account.
 *
 * Errors  too-many-tries.
 */
export async function countTry(store: Store, address: string, email?: string): Promise<void> {
  if (address !== "") await take(store, `address:${address}`, MOST_FROM_ONE_ADDRESS);
  if (email !== undefined) await take(store, accountKey(email), MOST_FOR_ONE_ACCOUNT);
}

/** The password was right: the account's count starts anew. */
export function forgetTries(store: Store, email: string): Promise<void> {
  return forgetAttempts(store, accountKey(email));
}

/**
 * Counts a try at the code of an exercise.
 *
 * Errors  too-many-tries.
 */
export async function countCode(store: Store, address: string): Promise<void> {
  if (address !== "") await take(store, `code:${address}`, MOST_CODES);
}

/**
 * Counts a use of the form of one link, from whatever address.
 *
 * Errors  too-many-tries.
 */
export async function countFormUse(store: Store, linkId: string, use: "form" | "photo"): Promise<void> {
  if (use === "photo") await take(store, `form-photo:${linkId}`, MOST_FORM_PHOTOS);
  else await take(store, `form:${linkId}`, MOST_FORM_USES);
}
