import { json } from "../../../server/reply.ts";
import { readMe } from "../../../server/routes/accounts.ts";
import { serve } from "../../../server/serve.ts";
import { prolonged, withCookies } from "../../../server/sessions.ts";

export const GET = serve(readMe, async ({ server, principal, request }) => {
  if (principal.is === "account") {
    const { id, name, role } = principal;
    const history = await server.history();
    const me = json({ person: { id, name, role }, local: false, ownerNeeded: false, history });
    return withCookies(me, await prolonged(server, request));
  }
  const local = principal.is === "local";
  const ownerNeeded = !(await server.hasAccounts());
  return json({ person: null, local, ownerNeeded, ...(local && { history: await server.history() }) });
});
