import { listAccounts } from "../../../../lib/store/index.ts";
import { json } from "../../../server/reply.ts";
import { listPeople } from "../../../server/routes/accounts.ts";
import { serve } from "../../../server/serve.ts";

export const GET = serve(listPeople, async ({ server }) => {
  const accounts = await listAccounts(server.store);
  const people = accounts
    .filter(({ disabled }) => !disabled)
    .map(({ id, name, role }) => ({ id, name, role }));
  return json({ people });
});
