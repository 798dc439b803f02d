import { listAttempts } from "../../../../../lib/store/index.ts";
import { filterOf } from "../../../../server/exercises/attempts-asked.ts";
import { statementsOfRows } from "../../../../server/exercises/told-attempts.ts";
import { ApiProblem } from "../../../../server/problem.ts";
import { sendStatements as send } from "../../../../server/records/send-statements.ts";
import { json } from "../../../../server/reply.ts";
import { sendStatements } from "../../../../server/routes/board.ts";
import { serve } from "../../../../server/serve.ts";

/** Attempts of one call: their statements fit into a few batches, so that a page can say how far it is. */
const PAGE = 30;

export const POST = serve(sendStatements, async ({ server, principal, body }) => {
  const { recordStore, origin } = server.config;
  if (recordStore === undefined || origin === undefined) {
    throw new ApiProblem(
      "no-record-store",
      "No record store is set on this server. The owner sets CORNERWISE_XAPI_ENDPOINT and starts it anew; or take the statements as a file.",
    );
  }
  const { after, ...filter } = body;
  const page = await listAttempts(server.store, { ...filterOf(principal, filter), after, limit: PAGE });
  const sent = await send(recordStore, statementsOfRows(page.attempts, origin));
  return json({
    attempts: page.attempts.length,
    ...sent,
    trouble: sent.trouble ?? null,
    // What was not sent whole is sent whole again: ids keep it from being there twice.
    next: sent.trouble === undefined ? page.next : (after ?? null),
  });
});
