import { changeAccount as change } from "../../../../../lib/store/index.ts";
import { hashPassword } from "../../../../server/password.ts";
import { json, matchVersions } from "../../../../server/reply.ts";
import { changeAccount } from "../../../../server/routes/accounts.ts";
import { serve } from "../../../../server/serve.ts";

export const PATCH = serve(changeAccount, async ({ server, params, body, request, now }) => {
  const { password, ...fields } = body;
  const account = await change(
    server.store,
    params.id,
    matchVersions(request.headers.get("if-match") ?? ""),
    { ...fields, ...(password !== undefined && { passwordHash: await hashPassword(password) }) },
    now,
  );
  return json(account, account.version);
});
