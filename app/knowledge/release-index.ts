/** Which knowledge: its version, and the SHA-256 of its text, which alone says exactly which. */
export interface ReleaseName {
  readonly version: string;
  readonly sha256: string;
}

/** What the server gives out, newest first; the newest is the one that the app was built with. */
export type ReleaseIndex = readonly (ReleaseName & { readonly frozen: boolean })[];

export const INDEX_FILE = "index.json";

export function releaseFile(sha256: string): string {
  return `${sha256}.json`;
}

/** Address of the list. */
export const INDEX_ADDRESS = `/knowledge/${INDEX_FILE}`;

/** Address of a release's text; what it holds never changes. */
export function releaseAddress(sha256: string): string {
  return `/knowledge/${releaseFile(sha256)}`;
}
