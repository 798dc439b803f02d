import type { Entry, EntryOf } from "../../../lib/case/entries.ts";
import { entriesOfStep } from "../../../lib/training/attempt-entries.ts";
import { CHECK_MADE, PART_ORDERED } from "../../../lib/training/attempt.ts";
import type { FoundOne } from "../../text/found-lines.ts";

/** One thing that a trainee did, as the screen shows it. */
export type MadeStep =
  | {
      readonly kind: "check";
      readonly key: string;
      readonly check: string;
      readonly minutes: number;
      readonly found: readonly FoundOne[];
    }
  | { readonly kind: "order"; readonly key: string; readonly repair: string };

/** What was made and ordered so far, in its order. */
export function madeSteps(entries: readonly Entry[]): MadeStep[] {
  return entries.flatMap((entry): MadeStep[] => {
    const { check, minutes, repair } = entry as { check?: string; minutes?: number; repair?: string };
    if (entry.kind === PART_ORDERED && repair !== undefined)
      return [{ kind: "order", key: entry.id, repair }];
    if (entry.kind !== CHECK_MADE || check === undefined) return [];
    const answers = entriesOfStep(entries, entry.id).filter(
      (e): e is EntryOf<"answered"> => e.kind === "answered",
    );
    const found = answers.map(({ finding, state, level, how }) => ({ finding, state, level, by: how }));
    return [{ kind: "check", key: entry.id, check, minutes: minutes ?? 0, found }];
  });
}
