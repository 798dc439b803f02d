import type { SiteRelease } from "../../knowledge/site-releases.ts";
import { siteReleases } from "../../knowledge/site-releases.ts";

let kept: Promise<SiteRelease[]> | undefined;

/** A version of the knowledge by its number or its sum; read once, as reading them all takes a second. */
export async function releaseNamed(name: string): Promise<SiteRelease | undefined> {
  if (process.env.NODE_ENV === "development") kept = undefined;
  kept ??= siteReleases().catch((error: unknown) => {
    kept = undefined;
    throw error;
  });
  const releases = await kept;
  return (
    releases.find(({ sha256 }) => sha256 === name) ??
    releases.find(({ knowledge }) => knowledge.version === name)
  );
}
