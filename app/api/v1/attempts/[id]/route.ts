import { attemptEntries } from "../../../../../lib/store/index.ts";
import { openPart, rampMinutes, stepsOf } from "../../../../../lib/training/index.ts";
import { attemptToSee } from "../../../../server/exercises/attempt-access.ts";
import { readyOf } from "../../../../server/exercises/ready.ts";
import { json } from "../../../../server/reply.ts";
import { readAttempt } from "../../../../server/routes/exercises.ts";
import { serve } from "../../../../server/serve.ts";

export const GET = serve(readAttempt, async (asked) => {
  const { attempt, handOut } = await attemptToSee(asked, asked.params.id);
  const { exercise, grounded } = await readyOf(handOut);
  const entries = await attemptEntries(asked.server.store, attempt.id);
  return json({
    id: attempt.id,
    // The id that the instructor gave may say what is wrong.
    exercise: { ...openPart(exercise), id: handOut.id },
    name: attempt.name,
    entries,
    minutes: rampMinutes(grounded, stepsOf(entries)).minutes,
    startedAt: attempt.startedAt,
    endedAt: attempt.endedAt,
  });
});
