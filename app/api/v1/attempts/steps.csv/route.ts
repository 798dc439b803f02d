import { everyAttempt, filterOf } from "../../../../server/exercises/attempts-asked.ts";
import { stepsCsv } from "../../../../server/exercises/steps-table.ts";
import { download } from "../../../../server/reply.ts";
import { readStepsTable } from "../../../../server/routes/board.ts";
import { serve } from "../../../../server/serve.ts";

export const GET = serve(readStepsTable, async ({ server, principal, query, now }) => {
  const { rows } = await everyAttempt(server.store, filterOf(principal, query));
  const csv = stepsCsv(rows);
  return download(csv, `attempt-steps-${now.slice(0, 10)}.csv`, "text/csv; charset=utf-8");
});
