import { nothing } from "../../../server/reply.ts";
import { signOutEverywhere } from "../../../server/routes/accounts.ts";
import { serve } from "../../../server/serve.ts";
import { endAllSessions, withCookies } from "../../../server/sessions.ts";

export const DELETE = serve(signOutEverywhere, async ({ server, request }) =>
  withCookies(nothing(), await endAllSessions(server, request)),
);
