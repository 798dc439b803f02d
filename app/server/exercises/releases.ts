import { join } from "node:path";
import { releasesHere } from "../../../lib/cli/releases-here.ts";
import type { Knowledge } from "../../../lib/knowledge/schema/compiled.ts";
import { kept } from "./kept.ts";

/** A version of the knowledge by its number or its sum, of those that were built with the app; undefined when there is none. */
export async function releaseNamed(
  name: string,
): Promise<{ readonly knowledge: Knowledge; readonly sha256: string } | undefined> {
  const here = (kept().releases ??= releasesHere(join(/* turbopackIgnore: true */ process.cwd(), "lib")));
  const sha256 = here.sumOf(name);
  if (sha256 !== undefined) return { knowledge: await here.open(sha256), sha256 };
  // The newest may not be frozen yet; then its number stands in its text alone.
  const newest = await here.open(here.newest);
  return newest.version === name ? { knowledge: newest, sha256: here.newest } : undefined;
}
