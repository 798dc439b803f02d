import { caseChanged } from "../store/case-news.ts";
import { databaseName, onPersonChange, pagePerson, personHere } from "../store/person-here.ts";
import { browserSyncStore } from "../store/sync-store.ts";
import { MOST_ENTRIES } from "./batch.ts";
import { serverDoor } from "./door.ts";
import { oneTabAtATime } from "./one-tab.ts";
import { readReply } from "./read-reply.ts";
import { type CaseHead, CasesReply, type MeReply } from "./replies.ts";
import { settlePerson } from "./settle-person.ts";
import { syncStep } from "./sync-step.ts";
import { memoryOf, newMemory, type Standing, type SyncTools } from "./sync-tools.ts";

/** What the screens see of the sending and fetching. */
export interface SyncState {
  readonly standing: Standing;
  /** Who we are to the server; undefined while it has not said. */
  readonly me: MeReply | undefined;
  /** Cases that are being asked for. */
  readonly asked: ReadonlySet<string>;
}

/** The server is asked this often for changed cases that are on no screen. */
const NEWS_MS = 60_000;

const NOTHING_YET: SyncState = { standing: { is: "unknown" }, me: undefined, asked: new Set() };

const memory = newMemory();
const listeners = new Set<() => void>();
let state = NOTHING_YET;
let started = false;
let running = false;
let woken = false;
let timer: ReturnType<typeof setTimeout> | undefined;
let newsAt = Number.NEGATIVE_INFINITY;

/** Sends and fetches from here on, as long as the page is open; harmless when called again. */
export function startSync(): void {
  if (started) return;
  started = true;
  const comeBack = (): void => {
    memory.notBefore = 0;
    // The server may have come back, got its first account, or been signed in to in another tab.
    if (memory.standing.is !== "no-server") memory.standing = { is: "unknown" };
    for (const known of memory.cases.values()) if (known.open > 0) known.asked = true;
    void work();
  };
  window.addEventListener("online", comeBack);
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "visible") comeBack();
  });
  // Another person's cases are in another database: the page starts anew with theirs.
  onPersonChange(() => window.location.reload());
  browserSyncStore.forgive().then(work, work);
}

/** Something was entered here, or is to be looked for. */
export function wakeSync(): void {
  if (started) void work();
}

/** A case comes on a screen: what is new in it is fetched. Gives the way to say that it has gone. */
export function openInSync(caseId: string): () => void {
  const known = memoryOf(memory, caseId, MOST_ENTRIES);
  known.open += 1;
  known.asked = true;
  publish();
  wakeSync();
  return () => {
    known.open -= 1;
  };
}

/** The server told of a newer state of a case; undefined when it may have one. */
export function heardOfCase(caseId: string, version: number | undefined): void {
  const known = memoryOf(memory, caseId, MOST_ENTRIES);
  if (version === undefined) known.asked = true;
  else known.heard = Math.max(known.heard, version);
  wakeSync();
}

/** What a list of the server says of cases that are here too. */
export function heardOfCases(heads: readonly Pick<CaseHead, "id" | "version">[]): void {
  for (const { id, version } of heads) memoryOf(memory, id, MOST_ENTRIES).heard = version;
  wakeSync();
}

/** The server is back after it was away: it may be another one, so it is asked who we are to it. */
export function serverIsBack(): void {
  memory.notBefore = 0;
  memory.standing = { is: "unknown" };
  void work();
}

export function syncState(): SyncState {
  return state;
}

export function onSyncState(listener: () => void): () => void {
  listeners.add(listener);
  return () => {
    listeners.delete(listener);
  };
}

function publish(): void {
  const asked = [...memory.cases].filter(([, known]) => known.asked).map(([caseId]) => caseId);
  const same = state.standing === memory.standing && state.me === memory.me && sameSet(state.asked, asked);
  if (same) return;
  state = { standing: memory.standing, me: memory.me, asked: new Set(asked) };
  for (const listener of listeners) listener();
}

function sameSet(set: ReadonlySet<string>, list: readonly string[]): boolean {
  return set.size === list.length && list.every((item) => set.has(item));
}

async function work(): Promise<void> {
  woken = true;
  if (running) return;
  // Somebody else signed in while this tab slept: what is here is theirs who opened it, and goes out when they are back.
  if (personHere()?.id !== pagePerson()?.id) return window.location.reload();
  running = true;
  clearTimeout(timer);
  const person = pagePerson();
  const tools: SyncTools = {
    store: browserSyncStore,
    door: serverDoor,
    personId: person?.id,
    now: () => Date.now(),
    random: () => Math.random(),
    onChange: caseChanged,
  };
  let waitMs: number | undefined;
  try {
    while (woken) {
      woken = false;
      await oneTabAtATime(`cornerwise-sync/${databaseName(person)}`, async () => {
        waitMs = await untilRest(tools);
      });
    }
  } catch {
    // The browser's own store failed; the screens that use it say so. Tried again later.
    waitMs = NEWS_MS;
  } finally {
    running = false;
    publish();
  }
  timer = setTimeout(() => void work(), waitMs ?? NEWS_MS);
}

/** Steps until nothing is due; gives how long to wait for what is due later. */
async function untilRest(tools: SyncTools): Promise<number | undefined> {
  for (;;) {
    const me = memory.me;
    const after = await syncStep(tools, memory);
    publish();
    if (memory.me !== undefined && memory.me !== me && settlePerson(memory.me)) return undefined;
    if (after.go === "later") return after.ms;
    if (after.go === "rest" && !(await lookForNews())) return undefined;
  }
}

/** Asks which cases changed lately; says whether it learnt of something to fetch. */
async function lookForNews(): Promise<boolean> {
  const due = Date.now() - newsAt >= NEWS_MS && document.visibilityState === "visible";
  if (!due || memory.standing.is !== "answers") return false;
  newsAt = Date.now();
  const reply = await serverDoor.ask({ method: "GET", path: "/api/v1/cases?limit=50" });
  const news = readReply(reply, CasesReply);
  for (const { id, version } of news?.cases ?? []) memoryOf(memory, id, MOST_ENTRIES).heard = version;
  // Now and then also with whom we speak: a server may have been set back to an older copy between two questions.
  memory.standing = { is: "unknown" };
  return news !== undefined;
}
