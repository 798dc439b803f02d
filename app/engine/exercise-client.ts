"use client";
import type { ReleaseName } from "../knowledge/release-index.ts";
import { newestRelease, releaseText } from "../knowledge/release-text.ts";
import type {
  ExerciseKind,
  ExerciseQuestions,
  FromExerciseWorker,
  ToExerciseWorker,
} from "./exercise-protocol.ts";

interface Waiting {
  readonly resolve: (answer: never) => void;
  readonly reject: (error: Error) => void;
}

interface Bench {
  readonly worker: Worker;
  readonly waiting: Map<number, Waiting>;
}

/** The worker of exercises, for the release that was asked with last: drawing one takes a second or two. */
let bench: { readonly sha256: string; readonly started: Promise<Bench> } | undefined;
let count = 0;

async function start(release: ReleaseName): Promise<Bench> {
  const [knowledge, newest] = await Promise.all([
    releaseText(release),
    newestRelease().catch(() => undefined),
  ]);
  const worker = new Worker(new URL("./exercise.worker.ts", import.meta.url), { type: "module" });
  const waiting = new Map<number, Waiting>();
  worker.onmessage = ({ data }: MessageEvent<FromExerciseWorker>) => {
    const asker = waiting.get(data.id);
    waiting.delete(data.id);
    if ("failed" in data) asker?.reject(new Error(data.failed));
    else asker?.resolve(data.answer as never);
  };
  worker.onerror = (event) => {
    if (bench?.sha256 === release.sha256) bench = undefined; // the next question starts a new one
    end({ worker, waiting }, event.message || "The reasoning stopped.");
  };
  const isNewest = release.sha256 === newest?.sha256;
  worker.postMessage({ kind: "load", knowledge, isNewest } satisfies ToExerciseWorker);
  return { worker, waiting };
}

function end({ worker, waiting }: Bench, why: string): void {
  worker.terminate();
  for (const { reject } of waiting.values()) reject(new Error(why));
  waiting.clear();
}

function benchOf(release: ReleaseName): Promise<Bench> {
  if (bench?.sha256 === release.sha256) return bench.started;
  bench?.started.then(
    (old) => end(old, "Another exercise was opened meanwhile."),
    () => undefined,
  );
  const started = start(release).catch((error: unknown) => {
    bench = undefined;
    throw error;
  });
  bench = { sha256: release.sha256, started };
  return started;
}

/** Asks about exercises with a release; answered from a worker of their own, so the page stays free. */
export async function askExercises<K extends ExerciseKind>(
  release: ReleaseName,
  kind: K,
  ask: ExerciseQuestions[K]["ask"],
): Promise<ExerciseQuestions[K]["answer"]> {
  const { worker, waiting } = await benchOf(release);
  const id = ++count;
  return new Promise<ExerciseQuestions[K]["answer"]>((resolve, reject) => {
    waiting.set(id, { resolve, reject });
    worker.postMessage({ kind, id, ask });
  });
}
