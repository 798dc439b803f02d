import { json, nothing } from "../../../server/reply.ts";
import { signIn, signOut } from "../../../server/routes/accounts.ts";
import { serve } from "../../../server/serve.ts";
import { endSession, openSession, withCookies } from "../../../server/sessions.ts";

export const POST = serve(signIn, async ({ server, address, body }) => {
  const { headers, account } = await openSession(server, address, body.email, body.password);
  const { id, name, role } = account;
  return withCookies(json({ id, name, role }), headers);
});

export const DELETE = serve(signOut, async ({ server, request }) =>
  withCookies(nothing(), await endSession(server, request)),
);
