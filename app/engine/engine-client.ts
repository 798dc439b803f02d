"use client";
import type { ReleaseName } from "../knowledge/release-index.ts";
import { newestRelease, releaseText } from "../knowledge/release-text.ts";
import type { FromWorker, Kind, Questions, ToWorker } from "./protocol.ts";

interface Waiting {
  readonly resolve: (answer: never) => void;
  readonly reject: (error: Error) => void;
}

interface Engine {
  readonly worker: Worker;
  readonly waiting: Map<number, Waiting>;
}

/** That of the case that is open, and that of the pages to read in between. */
const MOST_ENGINES = 2;

/** One worker for each release that is asked with, the one asked last at the end. */
const engines = new Map<string, Promise<Engine>>();
let count = 0;

async function start(release: ReleaseName): Promise<Engine> {
  const [knowledge, newest] = await Promise.all([
    releaseText(release),
    newestRelease().catch(() => undefined),
  ]);
  const worker = new Worker(new URL("./engine.worker.ts", import.meta.url), { type: "module" });
  const waiting = new Map<number, Waiting>();
  worker.onmessage = ({ data }: MessageEvent<FromWorker>) => {
    const asker = waiting.get(data.id);
    waiting.delete(data.id);
    if ("failed" in data) asker?.reject(new Error(data.failed));
    else asker?.resolve(data.answer as never);
  };
  worker.onerror = (event) => {
    engines.delete(release.sha256); // the next question starts a new one
    end({ worker, waiting }, event.message || "The reasoning stopped.");
  };
  const isNewest = release.sha256 === newest?.sha256;
  worker.postMessage({ kind: "load", knowledge, isNewest } satisfies ToWorker);
  return { worker, waiting };
}

function end({ worker, waiting }: Engine, why: string): void {
  worker.terminate();
  for (const { reject } of waiting.values()) reject(new Error(why));
  waiting.clear();
}

function engineOf(release: ReleaseName): Promise<Engine> {
  const { sha256 } = release;
  const engine =
    engines.get(sha256) ??
    start(release).catch((error: unknown) => {
      engines.delete(sha256);
      throw error;
    });
  engines.delete(sha256);
  engines.set(sha256, engine);
  for (const [oldest, idle] of engines) {
    if (engines.size <= MOST_ENGINES) break;
    engines.delete(oldest);
    idle.then(
      (ended) => end(ended, "Another case was opened meanwhile."),
      () => undefined,
    );
  }
  return engine;
}

/** Asks the engine with a release, the newest when none is named; it answers from its worker, so the page stays free. */
export async function askEngine<K extends Kind>(
  release: ReleaseName | undefined,
  kind: K,
  ask: Questions[K]["ask"],
): Promise<Questions[K]["answer"]> {
  const { worker, waiting } = await engineOf(release ?? (await newestRelease()));
  const id = ++count;
  return new Promise<Questions[K]["answer"]>((resolve, reject) => {
    waiting.set(id, { resolve, reject });
    worker.postMessage({ kind, id, ask });
  });
}
