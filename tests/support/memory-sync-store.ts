import type { Place, UnsentRow } from "../../app/store/open-database.ts";
import type { SyncStore } from "../../app/sync/sync-tools.ts";
import type { Entry } from "../../lib/case/index.ts";

/** A device's database in memory: what the browser keeps in IndexedDB. */
export interface MemoryDevice extends SyncStore {
  readonly kept: Map<string, Entry>;
  readonly unsent: Map<string, UnsentRow>;
  readonly places: Map<string, Place>;
  /** What the screen does when somebody enters something. */
  add(...entries: readonly Entry[]): void;
}

export function memoryDevice(): MemoryDevice {
  const kept = new Map<string, Entry>();
  const unsent = new Map<string, UnsentRow>();
  const places = new Map<string, Place>();
  const done = Promise.resolve();
  let history: string | undefined;
  const hasCase = (caseId: string): boolean => [...kept.values()].some((entry) => entry.caseId === caseId);
  return {
    kept,
    unsent,
    places,
    add(...entries) {
      for (const entry of entries) {
        kept.set(entry.id, entry);
        unsent.set(entry.id, { id: entry.id, caseId: entry.caseId });
      }
    },
    sending: () => Promise.resolve({ unsent: [...unsent.values()], places: [...places.values()] }),
    entries: (ids) => Promise.resolve(ids.flatMap((id) => kept.get(id) ?? [])),
    acknowledged(ids, place) {
      for (const id of ids) unsent.delete(id);
      if (hasCase(place.caseId)) places.set(place.caseId, place);
      return done;
    },
    takeIn(entries, from, place) {
      if ((places.get(place.caseId)?.after ?? 0) !== from) return done;
      for (const entry of entries) if (!kept.has(entry.id)) kept.set(entry.id, entry);
      places.set(place.caseId, place);
      return done;
    },
    refuse(id, trouble) {
      const row = unsent.get(id);
      if (row !== undefined) unsent.set(id, { ...row, refused: trouble });
      return done;
    },
    stop(caseId, trouble) {
      const place = places.get(caseId) ?? { caseId, after: 0, version: 0 };
      if (hasCase(caseId)) places.set(caseId, { ...place, trouble });
      return done;
    },
    queueAgain(caseId) {
      for (const { id, caseId: of } of kept.values()) if (of === caseId) unsent.set(id, { id, caseId });
      places.delete(caseId);
      return done;
    },
    settleHistory(now) {
      if (history !== undefined && history !== now) {
        for (const caseId of places.keys()) {
          for (const { id, caseId: of } of kept.values()) if (of === caseId) unsent.set(id, { id, caseId });
        }
        places.clear();
      }
      history = now;
      return done;
    },
    forgive() {
      for (const { refused: _, ...row } of unsent.values()) unsent.set(row.id, row);
      for (const { trouble: _, unread, ...place } of places.values())
        places.set(place.caseId, unread === undefined ? place : { ...place, after: 0 });
      return done;
    },
  };
}
