import { handOutById, revokeHandOut as revoke } from "../../../../../lib/store/index.ts";
import { exerciseFor } from "../../../../server/exercises/exercise-access.ts";
import { ApiProblem } from "../../../../server/problem.ts";
import { nothing } from "../../../../server/reply.ts";
import { revokeHandOut } from "../../../../server/routes/exercises.ts";
import { serve } from "../../../../server/serve.ts";

const noSuchHandOut = (): ApiProblem =>
  new ApiProblem("no-such-hand-out", "Nothing of yours was handed out under this id.");

export const DELETE = serve(revokeHandOut, async (asked) => {
  const { server, params, now } = asked;
  const handOut = await handOutById(server.store, params.id);
  if (handOut === undefined) throw noSuchHandOut();
  await exerciseFor(asked, handOut.exerciseId).catch((error: unknown) => {
    // Whose exercise it is stays hidden here as well.
    throw error instanceof ApiProblem && error.code === "no-such-exercise" ? noSuchHandOut() : error;
  });
  await revoke(server.store, params.id, now);
  return nothing();
});
