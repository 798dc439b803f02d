import { everyAttempt, filterOf } from "../../../../server/exercises/attempts-asked.ts";
import { statementsOfRows } from "../../../../server/exercises/told-attempts.ts";
import { download } from "../../../../server/reply.ts";
import { readStatements } from "../../../../server/routes/board.ts";
import { serve } from "../../../../server/serve.ts";

export const GET = serve(readStatements, async ({ server, principal, query, request, now }) => {
  const { rows } = await everyAttempt(server.store, filterOf(principal, query));
  const site = server.config.origin ?? new URL(request.url).origin;
  const text = JSON.stringify(statementsOfRows(rows, site));
  return download(text, `attempt-statements-${now.slice(0, 10)}.json`, "application/json");
});
