const FIRST_MS = 1_000;
const LONGEST_MS = 60_000;

/**
 * How long to leave a server alone that failed so many times in a row, in milliseconds.
 *
 * Doubles from one second up to a minute. `share` is from 0 to 1 and spreads the devices of a workshop over the second
 * half of it, so that they do not all come back at once.
 */
export function backOffMs(failures: number, share: number): number {
  const full = Math.min(LONGEST_MS, FIRST_MS * 2 ** Math.min(Math.max(failures - 1, 0), 10));
  return Math.round(full / 2 + (full / 2) * share);
}
