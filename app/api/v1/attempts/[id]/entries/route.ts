import { attemptToWork } from "../../../../../server/exercises/attempt-access.ts";
import { addEntries } from "../../../../../server/exercises/work.ts";
import { json } from "../../../../../server/reply.ts";
import { addAttemptEntries } from "../../../../../server/routes/exercises.ts";
import { serve } from "../../../../../server/serve.ts";

export const POST = serve(addAttemptEntries, async (asked) => {
  const { server, params, body, now } = asked;
  const handed = await attemptToWork(asked, params.id);
  return json(await addEntries({ ...handed, store: server.store, now }, body.entries));
});
