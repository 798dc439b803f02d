import type { ReleaseName } from "./release-index.ts";

/** How a case names the release that it is weighed with: by SHA-256, or in older cases by version. */
export interface WantedRelease {
  readonly release: string;
  readonly knowledgeVersion?: string | undefined;
}

/**
 * The release that a case means, of those that the server gives out and those that this device keeps; undefined when neither
 * has it.
 *
 * Another release of the same version is not taken for one that is named by its sum: a version may have been edited before it was
 * frozen.
 */
export function findRelease(
  { release }: WantedRelease,
  served: readonly ReleaseName[],
  kept: readonly ReleaseName[],
): ReleaseName | undefined {
  const known = [...served, ...kept];
  return known.find(({ sha256 }) => sha256 === release) ?? known.find(({ version }) => version === release);
}

/** What to call it when it cannot be had. */
export function wantedWords({ release, knowledgeVersion }: WantedRelease): string {
  return knowledgeVersion ?? release;
}
