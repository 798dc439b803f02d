import { attemptRow } from "../../../../../../lib/store/index.ts";
import type { Exercise } from "../../../../../../lib/training/index.ts";
import { attemptToSee } from "../../../../../server/exercises/attempt-access.ts";
import { debriefFor, verdictIn } from "../../../../../server/exercises/debrief.ts";
import { attemptJson } from "../../../../../server/exercises/rows.ts";
import { ApiProblem } from "../../../../../server/problem.ts";
import { json } from "../../../../../server/reply.ts";
import { readDebrief } from "../../../../../server/routes/exercises.ts";
import { serve } from "../../../../../server/serve.ts";

export const GET = serve(readDebrief, async (asked) => {
  const { store } = asked.server;
  const handed = await attemptToSee(asked, asked.params.id);
  if (handed.attempt.endedAt === null && !handed.staff) {
    throw new ApiProblem("attempt-open", "Give your verdict first; the debrief opens with it.");
  }
  const row = await attemptRow(store, handed.attempt.id);
  const { debrief, entries } = await debriefFor(store, handed);
  return json({
    attempt: row === undefined ? null : attemptJson(row),
    exercise: JSON.parse(handed.handOut.body) as Exercise,
    verdict: verdictIn(entries) ?? null,
    entries,
    debrief,
  });
});
