import { type DBSchema, type IDBPDatabase, type IDBPTransaction, openDB } from "idb";
import { type Entry, isKnownEntry } from "../../lib/case/entries.ts";
import type { Trouble } from "../sync/trouble.ts";
import { databaseName, pagePerson } from "./person-here.ts";

/** An entry that the server has not acknowledged yet. */
export interface UnsentRow {
  /** Id of the entry. */
  readonly id: string;
  readonly caseId: string;
  /** Made here for an invented case; waits until somebody adds to that case. */
  readonly held?: true;
  /** The server would not take it; it stays here and is tried again at the next start. */
  readonly refused?: Trouble;
}

/** How far a case has come between this device and the server; there is none before the server has it. */
export interface Place {
  readonly caseId: string;
  /** Every entry up to this number of the server's list is here. */
  readonly after: number;
  /** Newest number that was heard of. */
  readonly version: number;
  /** Why the case as a whole does not go out. */
  readonly trouble?: Trouble;
  /** Entries of the server that this version of the app could not read; looked for again at the next start. */
  readonly unread?: number;
}

export interface CornerwiseDatabase extends DBSchema {
  /** Append-only: an entry is put once and never changed. */
  entries: { key: string; value: Entry; indexes: { "by-case": string } };
  /** Text being typed and results being gathered, until they become entries. */
  drafts: { key: string; value: { key: string; text: string } };
  /** Choices of this device: units, who is asking. */
  settings: { key: string; value: { key: string; value: string } };
  unsent: { key: string; value: UnsentRow; indexes: { "by-case": string } };
  places: { key: string; value: Place };
}

export type Database = IDBPDatabase<CornerwiseDatabase>;

type StoreName = "entries" | "drafts" | "settings" | "unsent" | "places";
type Upgrade = IDBPTransaction<CornerwiseDatabase, StoreName[], "versionchange">;

let opening: Promise<Database> | undefined;

/** The database of the person whose page this is. */
export function database(): Promise<Database> {
  opening ??= openDatabase(databaseName(pagePerson()), () => {
    opening = undefined;
  }).catch((error: unknown) => {
    opening = undefined;
    throw error;
  });
  return opening;
}

/**
 * Opens the database of that name, made or brought up to date where needed.
 *
 * `onClosed` is called when the browser or a newer version of the app closed it.
 */
export async function openDatabase(name: string, onClosed: () => void): Promise<Database> {
  let block: (error: Error) => void = () => undefined;
  const blocked = new Promise<never>((_resolve, reject) => {
    block = reject;
  });
  const opened = openDB<CornerwiseDatabase>(name, 2, {
    async upgrade(db, from, _to, tx) {
      if (from < 1) {
        db.createObjectStore("entries", { keyPath: "id" }).createIndex("by-case", "caseId");
        db.createObjectStore("drafts", { keyPath: "key" });
        db.createObjectStore("settings", { keyPath: "key" });
      }
      if (from < 2) {
        db.createObjectStore("unsent", { keyPath: "id" }).createIndex("by-case", "caseId");
        db.createObjectStore("places", { keyPath: "caseId" });
        if (from === 1) await queueEverything(tx);
      }
    },
    blocked() {
      block(
        new Error(
          "Another tab still holds these cases with an older version of the app. Close that tab, then load this page again",
        ),
      );
    },
    blocking(_current, _blocked, event) {
      (event.target as IDBDatabase).close();
      onClosed();
    },
    terminated: onClosed,
  });
  // A database that opens after it was given up is let go, so that it stands in nobody's way.
  return Promise.race([opened, blocked]).catch((error: unknown) => {
    opened.then(
      (late) => late.close(),
      () => undefined,
    );
    throw error;
  });
}

/** What was entered before there was a server waits to go there. */
async function queueEverything(tx: Upgrade): Promise<void> {
  const byCase = new Map<string, Entry[]>();
  for (const entry of await tx.objectStore("entries").getAll()) {
    byCase.set(entry.caseId, [...(byCase.get(entry.caseId) ?? []), entry]);
  }
  const unsent = tx.objectStore("unsent");
  for (const [caseId, entries] of byCase) {
    const held = isUntouchedInvented(entries);
    await Promise.all(entries.map(({ id }) => unsent.put({ id, caseId, ...(held && { held }) })));
  }
}

/** An invented case as it was made: opened, with the customer's words, and nothing by anybody. */
function isUntouchedInvented(entries: readonly Entry[]): boolean {
  return (
    entries.some((entry) => isKnownEntry(entry) && entry.kind === "opened" && entry.invented === true) &&
    entries.every((entry) => entry.kind === "opened" || entry.kind === "told") &&
    entries.length <= 2
  );
}
