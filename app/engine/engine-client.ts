"use client";
import type { ReleaseName } from "../knowledge/release-index.ts";
import { newestRelease } from "../knowledge/release-text.ts";
import type { Kind, Questions } from "./protocol.ts";
import { workerClient } from "./worker-client.ts";

const askRelease = workerClient<Questions>({
  make: () => new Worker(new URL("./engine.worker.ts", import.meta.url), { type: "module" }),
  // That of the case that is open, and that of the pages to read in between.
  most: 2,
  replaced: "Another case was opened meanwhile.",
});

/** Asks the engine with a release, the newest when none is named; it answers from its worker, so the page stays free. */
export async function askEngine<K extends Kind>(
  release: ReleaseName | undefined,
  kind: K,
  ask: Questions[K]["ask"],
): Promise<Questions[K]["answer"]> {
  return askRelease(release ?? (await newestRelease()), kind, ask);
}
