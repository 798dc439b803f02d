import { attemptToWork } from "../../../../../server/exercises/attempt-access.ts";
import { makeCheck as keep } from "../../../../../server/exercises/work.ts";
import { json } from "../../../../../server/reply.ts";
import { makeCheck } from "../../../../../server/routes/exercises.ts";
import { serve } from "../../../../../server/serve.ts";

export const POST = serve(makeCheck, async (asked) => {
  const { server, params, body, now } = asked;
  const handed = await attemptToWork(asked, params.id);
  return json(await keep({ ...handed, store: server.store, now }, body));
});
