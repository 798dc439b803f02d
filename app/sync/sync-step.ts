import type { Place, UnsentRow } from "../store/open-database.ts";
import { backOffMs } from "./back-off.ts";
import { MOST_ENTRIES, nextBatch } from "./batch.ts";
import {
  type CaseMeaning,
  meaningOfMe,
  meaningOfPulled,
  meaningOfSent,
  type ServerMeaning,
} from "./meaning.ts";
import { nextStep, type CaseToSync } from "./plan.ts";
import { memoryOf, type SyncMemory, type SyncTools } from "./sync-tools.ts";

/** Go on at once, go on after so many milliseconds, or until something new happens. */
export type After =
  | { readonly go: "on" }
  | { readonly go: "later"; readonly ms: number }
  | { readonly go: "rest" };

const ON: After = { go: "on" };
const REST: After = { go: "rest" };

/** Most entries asked for at once. */
const MOST_PULLED = 500;

/** Does the one thing that is due: asks who we are, sends a batch of a case, or fetches what is new in one. */
export async function syncStep(tools: SyncTools, memory: SyncMemory): Promise<After> {
  switch (memory.standing.is) {
    case "unknown":
    case "away": {
      const ms = memory.notBefore - tools.now();
      return ms > 0 ? { go: "later", ms } : askWho(tools, memory);
    }
    case "no-server":
    case "sign-in":
    case "owner-needed":
      return REST;
    case "answers":
      return workOn(tools, memory);
  }
}

async function askWho(tools: SyncTools, memory: SyncMemory): Promise<After> {
  const meaning = meaningOfMe(await tools.door.ask({ method: "GET", path: "/api/v1/me" }));
  if (meaning.is !== "me") return serverFailed(tools, memory, meaning);
  const { me } = meaning;
  memory.me = me;
  memory.failures = 0;
  memory.notBefore = 0;
  // What one person entered is never sent in the name of another.
  const { person } = me;
  const ours = person?.id === tools.personId;
  if (me.local || person !== undefined) memory.standing = ours ? { is: "answers" } : { is: "sign-in" };
  else memory.standing = me.ownerNeeded ? { is: "owner-needed" } : { is: "sign-in" };
  if (memory.standing.is !== "answers") return REST;
  if (me.history !== undefined) await tools.store.settleHistory(me.history);
  return ON;
}

async function workOn(tools: SyncTools, memory: SyncMemory): Promise<After> {
  const { unsent, places } = await tools.store.sending();
  const placeOf = new Map(places.map((place) => [place.caseId, place]));
  const step = nextStep(casesToSync(unsent, placeOf, memory), memory.notBefore, tools.now());
  switch (step.do) {
    case "send":
      return send(tools, memory, unsent, placeOf.get(step.caseId) ?? noPlace(step.caseId));
    case "pull":
      return pull(tools, memory, placeOf.get(step.caseId) ?? noPlace(step.caseId));
    case "wait":
      return { go: "later", ms: step.ms };
    case "rest":
      return REST;
  }
}

function noPlace(caseId: string): Place {
  return { caseId, after: 0, version: 0 };
}

function casesToSync(
  unsent: readonly UnsentRow[],
  places: ReadonlyMap<string, Place>,
  memory: SyncMemory,
): CaseToSync[] {
  const sendable = new Map<string, number>();
  const started = new Set(unsent.map((row) => row.caseId));
  for (const row of unsent) {
    if (mayGo(row)) sendable.set(row.caseId, (sendable.get(row.caseId) ?? 0) + 1);
  }
  const ids = new Set([...sendable.keys(), ...places.keys(), ...memory.cases.keys()]);
  return [...ids].map((caseId) => {
    const place = places.get(caseId);
    const known = memory.cases.get(caseId);
    return {
      caseId,
      sendable: sendable.get(caseId) ?? 0,
      after: place?.after ?? 0,
      // A case that is not here is fetched only when it is asked for.
      heard: place === undefined ? 0 : Math.max(place.version, known?.heard ?? 0),
      // Begun here and not sent yet: the server cannot know it.
      asked: known?.asked === true && (place !== undefined || !started.has(caseId)),
      open: (known?.open ?? 0) > 0,
      stopped: place?.trouble !== undefined,
      notBefore: known?.notBefore ?? 0,
    };
  });
}

function mayGo(row: UnsentRow): boolean {
  return row.held === undefined && row.refused === undefined;
}

async function send(
  tools: SyncTools,
  memory: SyncMemory,
  unsent: readonly UnsentRow[],
  place: Place,
): Promise<After> {
  const { caseId } = place;
  const known = memoryOf(memory, caseId, MOST_ENTRIES);
  const waiting = unsent.filter((row) => row.caseId === caseId && mayGo(row)).map((row) => row.id);
  const batch = nextBatch(await tools.store.entries(waiting), known.most);
  const path = `/api/v1/cases/${encodeURIComponent(caseId)}/entries`;
  const meaning = meaningOfSent(await tools.door.ask({ method: "POST", path, body: { entries: batch } }));
  switch (meaning.is) {
    case "kept": {
      caseWentWell(memory, caseId);
      known.most = MOST_ENTRIES;
      if (meaning.version < place.after) return serverForgot(tools, memory, caseId);
      if (!batch.some((entry) => meaning.ids.includes(entry.id)))
        return caseFailed(tools, memory, caseId, { is: "stumbled" });
      // Numbers have no gaps: when only ours came on top of what is here, nothing is left to fetch.
      const after = meaning.version === place.after + meaning.added ? meaning.version : place.after;
      await tools.store.acknowledged(meaning.ids, {
        caseId,
        after,
        version: meaning.version,
        ...(place.unread !== undefined && { unread: place.unread }),
      });
      tools.onChange(caseId);
      return ON;
    }
    case "refused": {
      const [first] = batch;
      // The one at fault is looked for by halves, so that it holds up none of the others.
      if (batch.length > 1) known.most = Math.ceil(batch.length / 2);
      else if (first !== undefined) {
        await tools.store.refuse(first.id, meaning.trouble);
        known.most = MOST_ENTRIES;
        tools.onChange(caseId);
      }
      return ON;
    }
    case "unknown-case": {
      // Without its opening the server cannot place them: it may have lost the case. With it, it does not want them.
      const opens = batch.some((entry) => entry.kind === "opened");
      if (!opens && place.after > 0) return serverForgot(tools, memory, caseId);
      const trouble = { code: opens ? "not-yours" : "no-opening" };
      return caseFailed(tools, memory, caseId, { is: "stopped", trouble });
    }
    case "stumbled":
    case "stopped":
      return caseFailed(tools, memory, caseId, meaning);
    default:
      return serverFailed(tools, memory, meaning);
  }
}

async function pull(tools: SyncTools, memory: SyncMemory, place: Place): Promise<After> {
  const { caseId, after } = place;
  const known = memoryOf(memory, caseId, MOST_ENTRIES);
  // Put down before the question goes out: what is heard while it is under way is news of its own.
  const { asked, heard } = known;
  known.asked = false;
  known.heard = 0;
  const path = `/api/v1/cases/${encodeURIComponent(caseId)}/entries?after=${after}&limit=${MOST_PULLED}`;
  const meaning = meaningOfPulled(await tools.door.ask({ method: "GET", path }), caseId);
  switch (meaning.is) {
    case "pulled": {
      caseWentWell(memory, caseId);
      if (meaning.version < after) return serverForgot(tools, memory, caseId);
      // An empty answer below the newest number would be asked for for ever.
      const upTo = meaning.upTo > after ? meaning.upTo : meaning.version;
      const unread = (place.unread ?? 0) + meaning.unread;
      await tools.store.takeIn(meaning.entries, after, {
        caseId,
        after: upTo,
        version: meaning.version,
        ...(place.trouble !== undefined && place.trouble.code !== "not-yours" && { trouble: place.trouble }),
        ...(unread > 0 && { unread }),
      });
      tools.onChange(caseId);
      return ON;
    }
    case "unknown-case":
      if (after > 0 && place.trouble === undefined) return serverForgot(tools, memory, caseId);
      tools.onChange(caseId);
      return ON;
    case "stumbled":
    case "stopped":
      if (meaning.is === "stumbled") {
        known.asked ||= asked;
        known.heard = Math.max(known.heard, heard);
      }
      return caseFailed(tools, memory, caseId, meaning);
    default:
      known.asked ||= asked;
      known.heard = Math.max(known.heard, heard);
      return serverFailed(tools, memory, meaning);
  }
}

function caseWentWell(memory: SyncMemory, caseId: string): void {
  const known = memoryOf(memory, caseId, MOST_ENTRIES);
  known.failures = 0;
  known.notBefore = 0;
  memory.failures = 0;
}

/** A server that was set back to an older copy gets everything again that is here. */
async function serverForgot(tools: SyncTools, memory: SyncMemory, caseId: string): Promise<After> {
  await tools.store.queueAgain(caseId);
  const known = memoryOf(memory, caseId, MOST_ENTRIES);
  known.heard = 0;
  tools.onChange(caseId);
  return ON;
}

async function caseFailed(
  tools: SyncTools,
  memory: SyncMemory,
  caseId: string,
  meaning: Exclude<CaseMeaning, { is: "unknown-case" }>,
): Promise<After> {
  if (meaning.is === "stopped") await tools.store.stop(caseId, meaning.trouble);
  else {
    const known = memoryOf(memory, caseId, MOST_ENTRIES);
    known.failures += 1;
    known.notBefore = tools.now() + backOffMs(known.failures, tools.random());
  }
  tools.onChange(caseId);
  return ON;
}

function serverFailed(tools: SyncTools, memory: SyncMemory, meaning: ServerMeaning): After {
  switch (meaning.is) {
    case "lost":
    case "busy": {
      memory.failures += 1;
      const asked = meaning.is === "busy" ? (meaning.waitMs ?? 0) : 0;
      const ms = Math.max(asked, backOffMs(memory.failures, tools.random()));
      memory.notBefore = tools.now() + ms;
      memory.standing = { is: "away", ...(meaning.is === "busy" && { trouble: meaning.trouble }) };
      return { go: "later", ms };
    }
    case "sign-in":
      // Asked again who we are: the session may have ended, or somebody else signed in.
      memory.standing = { is: memory.standing.is === "answers" ? "unknown" : "sign-in" };
      return memory.standing.is === "unknown" ? ON : REST;
    case "no-server":
    case "owner-needed":
      memory.standing = { is: meaning.is };
      return REST;
  }
}
