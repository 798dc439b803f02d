import { randomUUID } from "node:crypto";
import { listAccounts as keptAccounts, makeAccount as keepAccount } from "../../../../lib/store/index.ts";
import { hashPassword } from "../../../server/password.ts";
import { json } from "../../../server/reply.ts";
import { listAccounts, makeAccount } from "../../../server/routes/accounts.ts";
import { serve } from "../../../server/serve.ts";

export const GET = serve(listAccounts, async ({ server }) =>
  json({ accounts: await keptAccounts(server.store) }),
);

export const POST = serve(makeAccount, async ({ server, body, now }) => {
  const { password, ...person } = body;
  const passwordHash = await hashPassword(password);
  const account = await keepAccount(server.store, { id: randomUUID(), ...person, passwordHash, now });
  return json(account, account.version, { status: 201 });
});
