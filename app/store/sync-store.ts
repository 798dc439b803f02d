import type { SyncStore } from "../sync/sync-tools.ts";
import { sendingOfAll } from "./case-database.ts";
import { database } from "./open-database.ts";

/** Setting that names the server's database. */
const HISTORY = "server-history";

/** Sending and fetching on the database of the person who is signed in here. */
export const browserSyncStore: SyncStore = {
  sending: sendingOfAll,

  async entries(ids) {
    const { store } = (await database()).transaction("entries");
    const found = await Promise.all(ids.map((id) => store.get(id)));
    return found.flatMap((entry) => (entry === undefined ? [] : [entry]));
  },

  async acknowledged(ids, place) {
    const tx = (await database()).transaction(["entries", "unsent", "places"], "readwrite");
    // Removed here while it went out: a place without entries would keep them from being fetched again.
    const here = await tx.objectStore("entries").index("by-case").count(place.caseId);
    await Promise.all([
      ...ids.map((id) => tx.objectStore("unsent").delete(id)),
      ...(here > 0 ? [tx.objectStore("places").put(place)] : []),
      tx.done,
    ]);
  },

  async takeIn(entries, from, place) {
    const tx = (await database()).transaction(["entries", "places"], "readwrite", { durability: "strict" });
    const places = tx.objectStore("places");
    const now = await places.get(place.caseId);
    if ((now?.after ?? 0) === from) {
      const store = tx.objectStore("entries");
      const keys = await Promise.all(entries.map(({ id }) => store.getKey(id)));
      const missing = entries.filter((_, index) => keys[index] === undefined);
      await Promise.all([...missing.map((entry) => store.put(entry)), places.put(place)]);
    }
    await tx.done;
  },

  async refuse(id, trouble) {
    const tx = (await database()).transaction("unsent", "readwrite");
    const row = await tx.store.get(id);
    if (row !== undefined) await tx.store.put({ ...row, refused: trouble });
    await tx.done;
  },

  async stop(caseId, trouble) {
    const tx = (await database()).transaction(["entries", "places"], "readwrite");
    const places = tx.objectStore("places");
    const [here, place] = await Promise.all([
      tx.objectStore("entries").index("by-case").count(caseId),
      places.get(caseId),
    ]);
    if (here > 0) await places.put({ ...(place ?? { caseId, after: 0, version: 0 }), trouble });
    await tx.done;
  },

  async queueAgain(caseId) {
    const tx = (await database()).transaction(["entries", "unsent", "places"], "readwrite");
    const keys = await tx.objectStore("entries").index("by-case").getAllKeys(caseId);
    await Promise.all([
      ...keys.map((id) => tx.objectStore("unsent").put({ id, caseId })),
      tx.objectStore("places").delete(caseId),
      tx.done,
    ]);
  },

  async settleHistory(history) {
    const tx = (await database()).transaction(["entries", "unsent", "places", "settings"], "readwrite");
    const settings = tx.objectStore("settings");
    const before = (await settings.get(HISTORY))?.value;
    if (before !== history) await settings.put({ key: HISTORY, value: history });
    if (before !== undefined && before !== history) {
      const places = tx.objectStore("places");
      for (const caseId of await places.getAllKeys()) {
        const keys = await tx.objectStore("entries").index("by-case").getAllKeys(caseId);
        await Promise.all([
          ...keys.map((id) => tx.objectStore("unsent").put({ id, caseId })),
          places.delete(caseId),
        ]);
      }
    }
    await tx.done;
  },

  async forgive() {
    const tx = (await database()).transaction(["unsent", "places"], "readwrite");
    const [unsent, places] = await Promise.all([
      tx.objectStore("unsent").getAll(),
      tx.objectStore("places").getAll(),
    ]);
    await Promise.all([
      ...unsent
        .filter((row) => row.refused !== undefined)
        .map(({ refused: _, ...row }) => tx.objectStore("unsent").put(row)),
      ...places
        .filter((place) => place.trouble !== undefined || place.unread !== undefined)
        .map(({ trouble: _, unread, ...place }) =>
          tx.objectStore("places").put(unread === undefined ? place : { ...place, after: 0 }),
        ),
      tx.done,
    ]);
  },
};
