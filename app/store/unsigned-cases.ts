import type { Entry } from "../../lib/case/entries.ts";
import { addEntries, allEntries } from "./case-database.ts";
import { caseChanged } from "./case-news.ts";
import { type Database, openDatabase } from "./open-database.ts";
import { databaseName, pagePerson } from "./person-here.ts";

/** The database of those who work without an account, for somebody who has one. */
async function withUnsigned<T>(work: (db: Database) => Promise<T>): Promise<T> {
  const db = await openDatabase(databaseName(undefined), () => undefined);
  try {
    return await work(db);
  } finally {
    db.close();
  }
}

/** Entries of the cases that were made here without signing in and have not gone to any server. */
async function unsentEntries(db: Database): Promise<readonly Entry[]> {
  const waiting = (await db.getAll("unsent")).filter((row) => row.held === undefined);
  const cases = [...new Set(waiting.map((row) => row.caseId))];
  return (await Promise.all(cases.map((id) => db.getAllFromIndex("entries", "by-case", id)))).flat();
}

/** How many cases were made on this device without signing in; 0 for somebody without an account: they have them open. */
export async function countUnsigned(): Promise<number> {
  if (pagePerson() === undefined) return 0;
  return withUnsigned(async (db) => new Set((await unsentEntries(db)).map((entry) => entry.caseId)).size);
}

/** Takes those cases over: they become the person's own and go to the server. */
export async function takeUnsignedOver(): Promise<void> {
  await withUnsigned(async (db) => {
    const entries = await unsentEntries(db);
    const here = new Set((await allEntries()).map((entry) => entry.id));
    await addEntries(entries.filter((entry) => !here.has(entry.id)));
    // Only what is safe in the one database is let go of in the other.
    const tx = db.transaction(["entries", "unsent", "places"], "readwrite");
    await Promise.all([
      ...entries.flatMap(({ id, caseId }) => [
        tx.objectStore("entries").delete(id),
        tx.objectStore("unsent").delete(id),
        tx.objectStore("places").delete(caseId),
      ]),
      tx.done,
    ]);
    for (const caseId of new Set(entries.map((entry) => entry.caseId))) caseChanged(caseId);
  });
}
