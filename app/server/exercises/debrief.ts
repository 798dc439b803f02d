import type { Entry, EntryOf } from "../../../lib/case/entries.ts";
import { attemptEntries, type Store } from "../../../lib/store/index.ts";
import { Conclusion, type Debrief, debriefOf, stepsOf } from "../../../lib/training/index.ts";
import { keptOrMade } from "../kept-or-made.ts";
import type { Handed } from "./attempt-access.ts";
import { kept } from "./kept.ts";
import { readyOf } from "./ready.ts";

/** Going through an attempt again takes a second, and one is often looked at several times. */
const MOST_KEPT = 20;

/** The verdict that the entries hold, as it was given. */
export function verdictIn(entries: readonly Entry[]): (Conclusion & { readonly note?: string }) | undefined {
  const entry = entries.find(({ kind }) => kind === "verdict") as EntryOf<"verdict"> | undefined;
  if (entry === undefined) return undefined;
  const { suspects, note } = entry;
  const { confidence } = entry as unknown as { confidence: number };
  return { ...Conclusion.parse({ suspects, confidence }), ...(note !== undefined && { note }) };
}

/** An attempt gone through, and its entries. */
export async function debriefFor(
  store: Store,
  { attempt, handOut }: Handed,
): Promise<{ readonly debrief: Debrief; readonly entries: readonly Entry[] }> {
  const entries = await attemptEntries(store, attempt.id);
  const ready = await readyOf(handOut);
  const debrief = keptOrMade(kept().debriefs, `${attempt.id} ${entries.length}`, MOST_KEPT, () =>
    debriefOf(ready, { steps: stepsOf(entries), conclusion: verdictIn(entries) }),
  );
  return { debrief, entries };
}
