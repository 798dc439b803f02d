import { attemptChoices } from "../../../../../lib/store/index.ts";
import { classBoard } from "../../../../../lib/training/index.ts";
import { everyAttempt, filterOf } from "../../../../server/exercises/attempts-asked.ts";
import { toldAttempt } from "../../../../server/exercises/told-attempts.ts";
import { json } from "../../../../server/reply.ts";
import { readBoard } from "../../../../server/routes/board.ts";
import { serve } from "../../../../server/serve.ts";

export const GET = serve(readBoard, async ({ server, principal, query }) => {
  const filter = filterOf(principal, query);
  const { rows, more } = await everyAttempt(server.store, filter);
  return json({
    board: classBoard(rows.map(toldAttempt)),
    more,
    choices: await attemptChoices(server.store, filter),
    recordStore: server.config.recordStore?.endpoint ?? null,
  });
});
