import { createHash } from "node:crypto";
import { readdirSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import { fileURLToPath } from "node:url";
import { caseUrgency, type Urgency } from "../case/case-urgency.ts";
import type { Entry } from "../case/entries.ts";
import { foldCase } from "../case/fold.ts";
import { situationOf } from "../case/situation.ts";
import { CornerwiseError } from "../errors.ts";
import {
  casesToReckon,
  openStore,
  readSetting,
  reckonCases,
  reckonEverythingAnew,
  type Reckoning,
  type Store,
  writeSetting,
} from "../store/index.ts";
import { type ReleasesHere, releasesHere } from "./releases-here.ts";

/** How often new cases are looked for when there were none, in milliseconds. */
const LOOK_MS = 1000;
/** Wait after a failure of the database. */
const AGAIN_MS = 5000;
/** Cases written in one transaction: few, so that whoever adds to one of them hardly waits. */
const TOGETHER = 12;
/** Longest rest after a case. */
const LONGEST_REST_MS = 250;

/** Setting that names what the urgencies of a database were reckoned with. */
const RECKONED_WITH = "reckoned-with";

export interface Beside {
  readonly database: string;
  readonly signal: AbortSignal;
  /** Says what hinders it. */
  readonly say: (text: string) => void;
  readonly releases?: ReleasesHere;
  /** Chance in [0, 1): two processes on one database start at different cases. */
  readonly uniform?: () => number;
}

/**
 * Keeps the urgency of all open cases up to date until it is told to stop: those that wait longest and those that changed last
 * in turn, so that a long queue (an older database, a newer program) keeps no new answer waiting. It rests as long as it worked.
 */
export async function reckonBeside(beside: Beside): Promise<void> {
  const { signal, say, database } = beside;
  let store: Store | undefined;
  let told = "";
  while (!signal.aborted) {
    try {
      const releases = beside.releases ?? releasesHere();
      store ??= await openStore({ database });
      await settle(store, releases);
      await work(store, releases, beside);
    } catch (error) {
      const text = error instanceof Error ? error.message : String(error);
      if (text !== told) say(`The urgency of cases cannot be reckoned now: ${text}`);
      told = text;
      await pause(AGAIN_MS, signal);
    }
  }
  await store?.close();
}

/** With another reasoning, knowledge or advice every case is weighed anew; else those that could not be. */
async function settle(store: Store, releases: ReleasesHere): Promise<void> {
  const now = `${digestOfReasoning()} ${releases.newest}`;
  const before = await readSetting(store, RECKONED_WITH);
  await reckonEverythingAnew(store, before === now ? "failed" : "all");
  if (before !== now) await writeSetting(store, RECKONED_WITH, now);
}

/** Parts of the library that an urgency follows from. */
const REASONING = ["car", "case", "engine", "knowledge", "maths"];

function digestOfReasoning(): string {
  const hash = createHash("sha256");
  // Where this file runs from: the sources, or what was built of them.
  const root = dirname(dirname(fileURLToPath(import.meta.url)));
  for (const part of REASONING) {
    const names = readdirSync(join(root, part), { recursive: true, encoding: "utf8" });
    for (const name of names.filter((one) => /(?<!\.d)\.[jt]s$/.test(one)).sort()) {
      hash.update(name).update(readFileSync(join(root, part, name)));
    }
  }
  return hash.digest("hex");
}

async function work(store: Store, releases: ReleasesHere, { signal, uniform = Math.random }: Beside) {
  let from: "oldest" | "newest" = "newest";
  let reckoning: Reckoning | undefined;
  while (!signal.aborted) {
    const waiting = await casesToReckon(store, { from, limit: 2 * TOGETHER });
    if (waiting.length === 0) {
      await pause(LOOK_MS, signal);
      continue;
    }
    // Opened only now: most of the time there is nothing to weigh.
    reckoning ??= await reckoningWith(releases, signal);
    const first = waiting.length > TOGETHER ? Math.floor(uniform() * (waiting.length - TOGETHER + 1)) : 0;
    await reckonCases(store, waiting.slice(first, first + TOGETHER), reckoning);
    from = from === "newest" ? "oldest" : "newest";
  }
}

/** Weighs cases by the releases that they name. */
export async function reckoningWith(releases: ReleasesHere, signal?: AbortSignal): Promise<Reckoning> {
  const { advice } = await releases.open(releases.newest);
  if (advice === undefined)
    throw new CornerwiseError("bad-record", "The newest release holds no advice on driving.");
  const urgency = async (entries: readonly Entry[]): Promise<Urgency> => {
    const state = foldCase(entries);
    const knowledge = await releases.open(state.release);
    return caseUrgency(knowledge, situationOf(knowledge, state), advice);
  };
  let began = performance.now();
  const rest = async (): Promise<void> => {
    await pause(Math.min(LONGEST_REST_MS, performance.now() - began), signal);
    began = performance.now();
  };
  return { urgency, levels: advice.levels, rest };
}

async function pause(ms: number, signal?: AbortSignal): Promise<void> {
  await sleep(ms, undefined, signal && { signal }).catch(() => undefined);
}
