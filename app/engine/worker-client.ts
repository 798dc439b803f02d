"use client";
import type { ReleaseName } from "../knowledge/release-index.ts";
import { newestRelease, releaseText } from "../knowledge/release-text.ts";
import type { Asked, FromWorker, ToWorker } from "./worker-messages.ts";

interface Waiting {
  readonly resolve: (answer: never) => void;
  readonly reject: (error: Error) => void;
}

interface Running {
  readonly worker: Worker;
  readonly waiting: Map<number, Waiting>;
}

interface ClientOptions {
  /** Starts a worker; the address stands with the caller, as the bundler looks for it there. */
  readonly make: () => Worker;
  /** Releases that have a worker at a time, 1 or more; the one that was asked with longest ago is stopped first. */
  readonly most: number;
  /** What a question is told whose worker was stopped for that of another release. */
  readonly replaced: string;
}

/**
 * Asks workers, one for each release.
 *
 * Errors  a question is rejected when the knowledge cannot be had, when it cannot be answered, and when its worker stops;
 *         the next one starts a new worker where there is none.
 */
export function workerClient<Q extends Asked<Q>>({ make, most, replaced }: ClientOptions) {
  /** The one that was asked last at the end. */
  const workers = new Map<string, Promise<Running>>();
  let count = 0;

  function workerOf(release: ReleaseName): Promise<Running> {
    const { sha256 } = release;
    const running = workers.get(sha256) ?? begin(release);
    workers.delete(sha256);
    workers.set(sha256, running);
    for (const [oldest, idle] of workers) {
      if (workers.size <= most) break;
      workers.delete(oldest);
      idle.then(
        (ended) => end(ended, replaced),
        () => undefined,
      );
    }
    return running;
  }

  function begin(release: ReleaseName): Promise<Running> {
    // Only its own place: it may have been stopped meanwhile, and another one started for the same release.
    const forget = (): void => {
      if (workers.get(release.sha256) === running) workers.delete(release.sha256);
    };
    const running = start<Q>(release, make, forget).catch((error: unknown) => {
      forget();
      throw error;
    });
    return running;
  }

  return async <K extends keyof Q>(
    release: ReleaseName,
    kind: K,
    ask: Q[K]["ask"],
  ): Promise<Q[K]["answer"]> => {
    const { worker, waiting } = await workerOf(release);
    const id = ++count;
    return new Promise<Q[K]["answer"]>((resolve, reject) => {
      waiting.set(id, { resolve, reject });
      worker.postMessage({ kind, id, ask });
    });
  };
}

async function start<Q extends Asked<Q>>(
  release: ReleaseName,
  make: () => Worker,
  forget: () => void,
): Promise<Running> {
  const [knowledge, newest] = await Promise.all([
    releaseText(release),
    newestRelease().catch(() => undefined),
  ]);
  const worker = make();
  const waiting = new Map<number, Waiting>();
  worker.onmessage = ({ data }: MessageEvent<FromWorker>) => {
    const asker = waiting.get(data.id);
    waiting.delete(data.id);
    if ("failed" in data) asker?.reject(new Error(data.failed));
    else asker?.resolve(data.answer as never);
  };
  worker.onerror = (event) => {
    forget();
    end({ worker, waiting }, event.message || "The reasoning stopped.");
  };
  const isNewest = release.sha256 === newest?.sha256;
  worker.postMessage({ kind: "load", knowledge, isNewest } satisfies ToWorker<Q>);
  return { worker, waiting };
}

function end({ worker, waiting }: Running, why: string): void {
  worker.terminate();
  for (const { reject } of waiting.values()) reject(new Error(why));
  waiting.clear();
}
