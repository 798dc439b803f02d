"use client";
import type { Knowledge } from "../../lib/knowledge/schema/compiled.ts";
import { knowledgeOf } from "./knowledge-of.ts";
import { newestRelease, releaseText } from "./release-text.ts";
import type { ReleaseName } from "./release-index.ts";

/** A release that is ready for use. */
export interface OpenRelease extends ReleaseName {
  readonly knowledge: Knowledge;
  /** The release that the app was built with; undefined while the server's list cannot be had. */
  readonly newest: ReleaseName | undefined;
}

const opened = new Map<string, Promise<Knowledge>>();

/** Opens a release once a visit; a failed try is not kept. */
export async function openReleaseHere(name: ReleaseName): Promise<OpenRelease> {
  const newest = await newestRelease().catch(() => undefined);
  const { version, sha256 } = name;
  const knowledge =
    opened.get(sha256) ??
    releaseText(name)
      .then((text) => knowledgeOf(text, sha256 === newest?.sha256))
      .catch((error: unknown) => {
        opened.delete(sha256);
        throw error;
      });
  opened.set(sha256, knowledge);
  return { version, sha256, newest, knowledge: await knowledge };
}
