import type { z } from "zod";
import { type AttemptFilter, type AttemptRow, listAttempts, type Store } from "../../../lib/store/index.ts";
import type { Principal } from "../principal.ts";
import type { AttemptFilter as AskedFilter } from "../schemas/exercises.ts";
import { ownersSeen } from "./exercise-access.ts";

const AT_ONCE = 500;
/** What a spreadsheet opens without ado, and what is added up in a second. */
export const MOST_ATTEMPTS = 20_000;

/** Which attempts the asker may see of those that were asked for. */
export function filterOf(principal: Principal, asked: z.infer<typeof AskedFilter>): AttemptFilter {
  const { exercise: exerciseId, trainee, course, ended, from, until } = asked;
  return {
    ownerId: ownersSeen("see-board", principal),
    exerciseId,
    trainee,
    course,
    ended: ended && ended === "yes",
    from,
    until,
  };
}

/** Every attempt of the filter, the last begun first; at most 20,000. */
export async function everyAttempt(
  store: Store,
  filter: AttemptFilter,
): Promise<{ readonly rows: readonly AttemptRow[]; readonly more: boolean }> {
  const rows: AttemptRow[] = [];
  let after: string | undefined;
  do {
    const page = await listAttempts(store, { ...filter, after, limit: AT_ONCE });
    rows.push(...page.attempts);
    after = page.next ?? undefined;
  } while (after !== undefined && rows.length < MOST_ATTEMPTS);
  return { rows, more: after !== undefined };
}
