import { type AttemptRow, listAttempts } from "../../../../lib/store/index.ts";
import { ownersSeen } from "../../../server/exercises/exercise-access.ts";
import { attemptsCsv } from "../../../server/exercises/rows.ts";
import { download } from "../../../server/reply.ts";
import { readAttemptsTable } from "../../../server/routes/exercises.ts";
import { serve } from "../../../server/serve.ts";

const AT_ONCE = 500;
/** What a spreadsheet opens without ado. */
const MOST_LINES = 20_000;

export const GET = serve(readAttemptsTable, async ({ server, principal, query, now }) => {
  const { exercise: exerciseId, trainee } = query;
  const ownerId = ownersSeen("see-board", principal);
  const rows: AttemptRow[] = [];
  let after: string | undefined;
  do {
    const page = await listAttempts(server.store, { ownerId, exerciseId, trainee, after, limit: AT_ONCE });
    rows.push(...page.attempts);
    after = page.next ?? undefined;
  } while (after !== undefined && rows.length < MOST_LINES);
  return download(attemptsCsv(rows), `attempts-${now.slice(0, 10)}.csv`, "text/csv; charset=utf-8");
});
