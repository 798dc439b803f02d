import { existsSync, renameSync, rmSync } from "node:fs";

/**
 * Put a folder that was made aside in the place of another, whole, so that a program that starts meanwhile never meets half of it.
 *
 * When somebody else puts theirs in place at the same moment, theirs stays: it is as new.
 */
export function putInPlace(made, place) {
  const old = `${made}-old`;
  try {
    if (existsSync(place)) renameSync(place, old);
    renameSync(made, place);
  } catch (error) {
    if (!existsSync(place)) throw error;
  } finally {
    rmSync(old, { recursive: true, force: true });
  }
}
