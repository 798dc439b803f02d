import { join } from "node:path";
import { type ReleasesHere, releasesHere } from "../../lib/cli/releases-here.ts";
import type { Knowledge } from "../../lib/knowledge/schema/compiled.ts";

/** Every route is a bundle of its own: what they share lies on the one global object. */
const KEY = Symbol.for("cornerwise.releases");
const shared = globalThis as { [KEY]?: ReleasesHere };

/**
 * The versions of the knowledge that were built with the app.
 *
 * Errors  CornerwiseError not-found: there are none.
 */
export function releases(): ReleasesHere {
  return (shared[KEY] ??= releasesHere(join(/* turbopackIgnore: true */ process.cwd(), "lib")));
}

/** One of them by its number or its sum; undefined when there is none. */
export async function releaseNamed(
  name: string,
): Promise<{ readonly knowledge: Knowledge; readonly sha256: string } | undefined> {
  const here = releases();
  const sha256 = here.sumOf(name);
  if (sha256 !== undefined) return { knowledge: await here.open(sha256), sha256 };
  // The newest may not be frozen yet; then its number stands in its text alone.
  const newest = await here.open(here.newest);
  return newest.version === name ? { knowledge: newest, sha256: here.newest } : undefined;
}
