import type { KnownEntry } from "../../lib/case/entries.ts";

type Body<E> = E extends KnownEntry ? Omit<E, "id" | "caseId" | "at" | "by"> : never;

/** What an entry says, before it is given its id, case, time and author. */
export type EntryBody = Body<KnownEntry>;

/** A fresh id for a case or an entry. */
export function newId(): string {
  // Not crypto.randomUUID: that is missing on a plain http address in a workshop's own network.
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return Array.from(bytes, (b) => b.toString(16).padStart(2, "0")).join("");
}

let last = 0;

/** The time now; never the same twice, so that entries made together keep their order. */
function nextMoment(): string {
  last = Math.max(Date.now(), last + 1);
  return new Date(last).toISOString();
}

/** Stamps what is said with id, case, time and author. */
export function newEntry(caseId: string, body: EntryBody, by: string): KnownEntry {
  return { ...body, id: newId(), caseId, at: nextMoment(), by: by.trim() || "not signed" };
}
