"use client";
import { sha256Hex } from "../../lib/knowledge/canonical.ts";
import { keepRelease, keptReleases, keptText } from "./kept-releases.ts";
import { findRelease, type WantedRelease } from "./find-release.ts";
import { INDEX_ADDRESS, releaseAddress, type ReleaseIndex, type ReleaseName } from "./release-index.ts";

let index: Promise<ReleaseIndex> | undefined;

/** What the server gives out, fetched once a visit; a failed try is not kept. */
export function releaseIndex(): Promise<ReleaseIndex> {
  index ??= fetch(INDEX_ADDRESS)
    .then((response) => {
      if (!response.ok) throw new Error(`The list of versions could not be fetched (${response.status}).`);
      return response.json() as Promise<ReleaseIndex>;
    })
    .catch((error: unknown) => {
      index = undefined;
      throw error;
    });
  return index;
}

/** The release that the app was built with. */
export async function newestRelease(): Promise<ReleaseName> {
  const [newest] = await releaseIndex();
  if (newest === undefined) throw new Error("The server has no knowledge to give out.");
  return newest;
}

/** Every release that can be had here; the server's when it answers, and what this device keeps. */
export async function locateRelease(wanted: WantedRelease): Promise<ReleaseName | undefined> {
  const served = await releaseIndex().catch(() => []);
  const found = findRelease(wanted, served, []);
  return found ?? findRelease(wanted, [], await keptReleases().catch(() => []));
}

const texts = new Map<string, Promise<string>>();

/** The text of a release: from this device if it keeps it, else from the server; a failed try is not kept. */
export function releaseText(name: ReleaseName): Promise<string> {
  const { sha256 } = name;
  const text =
    texts.get(sha256) ??
    textOf(name).catch((error: unknown) => {
      texts.delete(sha256);
      throw error;
    });
  texts.set(sha256, text);
  return text;
}

async function textOf({ version, sha256 }: ReleaseName): Promise<string> {
  const kept = await keptText(sha256).catch(() => undefined);
  if (kept !== undefined) return kept;
  const response = await fetch(releaseAddress(sha256)).catch((cause: unknown) => {
    throw new Error("The network is away, or the server does not answer.", { cause });
  });
  if (!response.ok) throw new Error(`Knowledge ${version} could not be fetched (${response.status}).`);
  const text = await response.text();
  const { subtle } = globalThis.crypto;
  // Not on plain http in a workshop's own network: browsers give no digest there.
  if (subtle !== undefined && (await sha256Hex(text, (bytes) => subtle.digest("SHA-256", bytes))) !== sha256)
    throw new Error(`Knowledge ${version} arrived damaged. Try again.`);
  return text;
}

/**
 * Sees to it that this device keeps a release that one of its cases is weighed with, so that neither an update of the app nor a
 * server that no longer gives it out takes it away.
 */
export async function keepForCase(name: ReleaseName): Promise<void> {
  if ((await keptText(name.sha256)) === undefined) await keepRelease(name, await releaseText(name));
}
