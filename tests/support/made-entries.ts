import type { Entry, EntryOf } from "../../lib/case/index.ts";

const START = Date.UTC(2026, 2, 1, 9);

/** The n-th second of an invented morning, as text. */
export const second = (n: number): string => new Date(START + n * 1000).toISOString();

/** The opening of an invented case. */
export function opening(caseId: string, fields: Partial<EntryOf<"opened">> = {}): EntryOf<"opened"> {
  return {
    id: `${caseId}-opened`,
    caseId,
    at: second(0),
    by: "ana",
    kind: "opened",
    release: "aaa",
    car: { drive: "front" },
    customer: "Invented Customer",
    vehicle: "invented hatchback",
    ...fields,
  };
}

/** A note in an invented case. */
export function note(caseId: string, id: string, text = `note ${id}`, at = second(1)): EntryOf<"note"> {
  return { id, caseId, at, by: "ben", kind: "note", text };
}

/** An entry of any kind, with the head filled in. */
export function made(caseId: string, id: string, at: string, body: Record<string, unknown>): Entry {
  return { id, caseId, at, by: "ben", ...body } as Entry;
}
