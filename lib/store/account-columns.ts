import type { Flag, Moment, StoreKind } from "./tables.ts";

/** A moment as text, ISO 8601, UTC, whichever way the database gives it. */
export function momentText(moment: Moment): string {
  return moment instanceof Date ? moment.toISOString() : moment;
}

/** Yes or no as the database keeps it in the tables of accounts. */
export function flagOf(kind: StoreKind, yes: boolean): Flag | boolean {
  return kind === "postgres" ? yes : yes ? 1 : 0;
}

/** Columns of a way to sign in that other services would fill; with a password there is nothing to put there. */
export const NO_TOKENS = {
  accessToken: null,
  refreshToken: null,
  idToken: null,
  accessTokenExpiresAt: null,
  refreshTokenExpiresAt: null,
  scope: null,
} as const;
