import { type Entry, type EntryOf, isByForm } from "./entries.ts";
import { orderEntries } from "./order-entries.ts";
import { retractedIds } from "./retracted-ids.ts";

/** One thing that the customer gave by the form of a link: an answer, words of their own, or a photo. */
export interface SaidByForm {
  /** Made on the customer's device; the ids of its entries begin with it. */
  readonly id: string;
  readonly at: string;
  /** Id of the link. */
  readonly link: string;
  readonly kind: "answer" | "words" | "photo";
  /** For an answer, the question's id and words. */
  readonly question?: string;
  readonly asked?: string;
  /** The answer picked, the words, or the photo's caption. */
  readonly text: string;
  /** For a photo, its id. */
  readonly photo?: string;
  /** The entries that hold it. */
  readonly entries: readonly string[];
}

/** Between the id of what was said and the number of the entry, for an answer that needs several. */
const NUMBERED = "_";

/** Id of the n-th entry (from 0) of what the customer said under `id`; `id` itself holds no underscore. */
export const entryIdOf = (id: string, n: number): string => (n === 0 ? id : `${id}${NUMBERED}${n}`);

/** Id under which the customer said what this entry holds. */
const saidId = (entry: Entry): string => entry.id.split(NUMBERED)[0] ?? entry.id;

/**
 * What the customer said by forms and did not take back, in order.
 *
 * Shape   link: only by the form of that link.
 */
export function saidByForm(entries: Iterable<Entry>, link?: string): SaidByForm[] {
  const ordered = orderEntries(entries);
  const retracted = retractedIds(ordered);
  const said = new Map<string, SaidByForm>();
  for (const entry of ordered) {
    if (!isByForm(entry) || !holdsSaid(entry) || retracted.has(entry.id)) continue;
    const made = saidIn(entry);
    if (link !== undefined && made.link !== link) continue;
    const before = said.get(made.id);
    said.set(made.id, before === undefined ? made : { ...before, entries: [...before.entries, entry.id] });
  }
  return [...said.values()];
}

type SaidEntry = EntryOf<"answered" | "told" | "photo">;

/** Another kind may come from the customer too: a retraction, or what only a newer version understands. */
function holdsSaid(entry: Entry): entry is SaidEntry {
  return entry.kind === "answered" || entry.kind === "told" || entry.kind === "photo";
}

function saidIn(entry: SaidEntry): SaidByForm {
  const head = { id: saidId(entry), at: entry.at, link: entry.link ?? "", entries: [entry.id] };
  switch (entry.kind) {
    case "told":
      return { ...head, kind: "words", text: entry.text };
    case "photo":
      return { ...head, kind: "photo", text: entry.caption ?? "", photo: entry.photo };
    case "answered":
      return {
        ...head,
        kind: "answer",
        text: entry.asked?.choice ?? "",
        ...(entry.asked !== undefined && { question: entry.asked.question, asked: entry.asked.text }),
      };
  }
}
