"use client";
import { knowledgeText } from "../knowledge/use-knowledge.ts";
import type { FromWorker, Kind, Questions, ToWorker } from "./protocol.ts";

interface Waiting {
  readonly resolve: (answer: never) => void;
  readonly reject: (error: Error) => void;
}

let starting: Promise<Worker> | undefined;
let count = 0;
const waiting = new Map<number, Waiting>();

async function start(): Promise<Worker> {
  const knowledge = await knowledgeText();
  const worker = new Worker(new URL("./engine.worker.ts", import.meta.url), { type: "module" });
  worker.onmessage = ({ data }: MessageEvent<FromWorker>) => {
    const asker = waiting.get(data.id);
    waiting.delete(data.id);
    if ("failed" in data) asker?.reject(new Error(data.failed));
    else asker?.resolve(data.answer as never);
  };
  worker.onerror = (event) => {
    for (const { reject } of waiting.values()) reject(new Error(event.message || "The reasoning stopped."));
    waiting.clear();
    worker.terminate();
    starting = undefined; // the next question starts a new one
  };
  worker.postMessage({ kind: "load", knowledge } satisfies ToWorker);
  return worker;
}

/** Asks the engine; it answers from its worker, so the page stays free. */
export async function askEngine<K extends Kind>(
  kind: K,
  ask: Questions[K]["ask"],
): Promise<Questions[K]["answer"]> {
  starting ??= start().catch((error: unknown) => {
    starting = undefined;
    throw error;
  });
  const worker = await starting;
  const id = ++count;
  return new Promise<Questions[K]["answer"]>((resolve, reject) => {
    waiting.set(id, { resolve, reject });
    worker.postMessage({ kind, id, ask });
  });
}
