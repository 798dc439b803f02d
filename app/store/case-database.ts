import type { Entry } from "../../lib/case/entries.ts";
import { database, type Place, type UnsentRow } from "./open-database.ts";

/**
 * Adds entries and queues them for the server, in one transaction; fails when one of them is there already.
 *
 * `held` keeps them back until something else is added to their case.
 */
export async function addEntries(
  entries: readonly Entry[],
  how: { readonly held?: true } = {},
): Promise<void> {
  const tx = (await database()).transaction(["entries", "unsent"], "readwrite", { durability: "strict" });
  const unsent = tx.objectStore("unsent");
  const adding = entries.flatMap((entry) => [
    tx.objectStore("entries").add(entry),
    unsent.put({ id: entry.id, caseId: entry.caseId, ...how }),
  ]);
  const freeing = how.held === true ? [] : [...new Set(entries.map((entry) => entry.caseId))];
  await Promise.all([
    ...adding,
    ...freeing.map(async (caseId) => {
      const rows = await unsent.index("by-case").getAll(caseId);
      const held = rows.filter((row) => row.held === true);
      await Promise.all(held.map(({ id }) => unsent.put({ id, caseId })));
    }),
    tx.done,
  ]);
}

/** Every entry of one case, in no particular order. */
export async function entriesOfCase(caseId: string): Promise<Entry[]> {
  return (await database()).getAllFromIndex("entries", "by-case", caseId);
}

/** Every entry on this device. */
export async function allEntries(): Promise<Entry[]> {
  return (await database()).getAll("entries");
}

/** What of one case waits for the server, and how far the case has come with it. */
export async function sendingOfCase(
  caseId: string,
): Promise<{ readonly unsent: readonly UnsentRow[]; readonly place: Place | undefined }> {
  const tx = (await database()).transaction(["unsent", "places"]);
  const [unsent, place] = await Promise.all([
    tx.objectStore("unsent").index("by-case").getAll(caseId),
    tx.objectStore("places").get(caseId),
  ]);
  return { unsent, place };
}

/** The same of every case. */
export async function sendingOfAll(): Promise<{
  readonly unsent: readonly UnsentRow[];
  readonly places: readonly Place[];
}> {
  const tx = (await database()).transaction(["unsent", "places"]);
  const [unsent, places] = await Promise.all([
    tx.objectStore("unsent").getAll(),
    tx.objectStore("places").getAll(),
  ]);
  return { unsent, places };
}

/** Setting under which the urgency of a case was last noted. */
export const urgencyKey = (caseId: string): string => `urgency/${caseId}`;

/** Removes a whole case from this browser, drafts and what waits for the server included. */
export async function removeCase(caseId: string): Promise<void> {
  const db = await database();
  const tx = db.transaction(["entries", "drafts", "unsent", "places", "settings"], "readwrite");
  const [entries, unsent, drafts] = await Promise.all([
    tx.objectStore("entries").index("by-case").getAllKeys(caseId),
    tx.objectStore("unsent").index("by-case").getAllKeys(caseId),
    tx.objectStore("drafts").getAllKeys(IDBKeyRange.bound(`${caseId}/`, `${caseId}/\uffff`)),
  ]);
  await Promise.all([
    ...entries.map((key) => tx.objectStore("entries").delete(key)),
    ...unsent.map((key) => tx.objectStore("unsent").delete(key)),
    ...drafts.map((key) => tx.objectStore("drafts").delete(key)),
    tx.objectStore("places").delete(caseId),
    tx.objectStore("settings").delete(urgencyKey(caseId)),
    tx.done,
  ]);
}

export async function readDraft(key: string): Promise<string> {
  return (await (await database()).get("drafts", key))?.text ?? "";
}

/** Keeps text being typed; empty text removes the draft. */
export async function writeDraft(key: string, text: string): Promise<void> {
  const db = await database();
  if (text === "") await db.delete("drafts", key);
  else await db.put("drafts", { key, text });
}

export async function readSetting(key: string): Promise<string | undefined> {
  return (await (await database()).get("settings", key))?.value;
}

export async function writeSetting(key: string, value: string): Promise<void> {
  await (await database()).put("settings", { key, value });
}
