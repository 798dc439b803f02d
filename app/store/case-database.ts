import { type DBSchema, type IDBPDatabase, openDB } from "idb";
import type { Entry } from "../../lib/case/entries.ts";

interface CornerwiseDatabase extends DBSchema {
  /** Append-only: an entry is put once and never changed. */
  entries: { key: string; value: Entry; indexes: { "by-case": string } };
  /** Text being typed and results being gathered, until they become entries. */
  drafts: { key: string; value: { key: string; text: string } };
  /** Choices of this device: units, who is asking. */
  settings: { key: string; value: { key: string; value: string } };
}

let opening: Promise<IDBPDatabase<CornerwiseDatabase>> | undefined;

function database(): Promise<IDBPDatabase<CornerwiseDatabase>> {
  opening ??= openDB<CornerwiseDatabase>("cornerwise", 1, {
    upgrade(db) {
      db.createObjectStore("entries", { keyPath: "id" }).createIndex("by-case", "caseId");
      db.createObjectStore("drafts", { keyPath: "key" });
      db.createObjectStore("settings", { keyPath: "key" });
    },
    terminated() {
      opening = undefined;
    },
  }).catch((error: unknown) => {
    opening = undefined;
    throw error;
  });
  return opening;
}

/** Adds entries; fails when one of them is there already. */
export async function addEntries(entries: readonly Entry[]): Promise<void> {
  const tx = (await database()).transaction("entries", "readwrite", { durability: "strict" });
  await Promise.all([...entries.map((entry) => tx.store.add(entry)), tx.done]);
}

/** Every entry of one case, in no particular order. */
export async function entriesOfCase(caseId: string): Promise<Entry[]> {
  return (await database()).getAllFromIndex("entries", "by-case", caseId);
}

/** Every entry in this browser. */
export async function allEntries(): Promise<Entry[]> {
  return (await database()).getAll("entries");
}

/** Removes a whole case from this browser, drafts included. */
export async function removeCase(caseId: string): Promise<void> {
  const db = await database();
  const tx = db.transaction(["entries", "drafts"], "readwrite");
  const keys = await tx.objectStore("entries").index("by-case").getAllKeys(caseId);
  const drafts = await tx
    .objectStore("drafts")
    .getAllKeys(IDBKeyRange.bound(`${caseId}/`, `${caseId}/\uffff`));
  await Promise.all([
    ...keys.map((key) => tx.objectStore("entries").delete(key)),
    ...drafts.map((key) => tx.objectStore("drafts").delete(key)),
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
