import { hash, verify } from "@node-rs/argon2";

/**
 * Cost of one hash by Argon2id, which is what the library takes by itself: 19 MiB, two passes, one lane.
 *
 * Source  OWASP password storage cheat sheet, Argon2id, minimum configuration.
 */
export const ARGON2 = {
  memoryCost: 19_456,
  timeCost: 2,
  parallelism: 1,
} as const;

/** One form for a text that can be typed in several: keyboards differ (NIST SP 800-63B asks for NFKC or NFKD). */
const plain = (password: string): string => password.normalize("NFKC");

export function hashPassword(password: string): Promise<string> {
  return hash(plain(password), ARGON2);
}

export function verifyPassword(hashed: string, password: string): Promise<boolean> {
  return verify(hashed, plain(password));
}
