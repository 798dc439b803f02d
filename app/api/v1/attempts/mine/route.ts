import { ownAttempts } from "../../../../../lib/store/index.ts";
import { keyHash } from "../../../../server/exercises/attempt-access.ts";
import { attemptJson } from "../../../../server/exercises/rows.ts";
import { json } from "../../../../server/reply.ts";
import { readOwnAttempts } from "../../../../server/routes/exercises.ts";
import { serve } from "../../../../server/serve.ts";

const MOST_SHOWN = 200;

export const GET = serve(readOwnAttempts, async ({ server, principal, request }) => {
  const { store } = server;
  const tokenHash = keyHash(request);
  // What was begun in this browser before signing in stays in the list.
  const [byAccount, byKey] = await Promise.all([
    principal.is === "account" ? ownAttempts(store, { traineeId: principal.id }, MOST_SHOWN) : [],
    tokenHash === undefined ? [] : ownAttempts(store, { tokenHash }, MOST_SHOWN),
  ]);
  const attempts = [...byAccount, ...byKey].toSorted((a, b) => (a.startedAt < b.startedAt ? 1 : -1));
  return json({ attempts: attempts.map(attemptJson) });
});
