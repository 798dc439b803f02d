import { nothing } from "../../../server/reply.ts";
import { changePassword } from "../../../server/routes/accounts.ts";
import { forbidden, serve } from "../../../server/serve.ts";
import { changePassword as change, withCookies } from "../../../server/sessions.ts";

export const PUT = serve(changePassword, async ({ server, request, address, principal, body }) => {
  if (principal.is !== "account") throw forbidden();
  return withCookies(nothing(), await change(server, request, address, principal.id, body));
});
