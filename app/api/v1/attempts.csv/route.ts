import { everyAttempt, filterOf } from "../../../server/exercises/attempts-asked.ts";
import { attemptsCsv } from "../../../server/exercises/rows.ts";
import { download } from "../../../server/reply.ts";
import { readAttemptsTable } from "../../../server/routes/exercises.ts";
import { serve } from "../../../server/serve.ts";

export const GET = serve(readAttemptsTable, async ({ server, principal, query, now }) => {
  const { rows } = await everyAttempt(server.store, filterOf(principal, query));
  return download(attemptsCsv(rows), `attempts-${now.slice(0, 10)}.csv`, "text/csv; charset=utf-8");
});
