import { randomUUID } from "node:crypto";
import { makeFirstAccount as keepFirstAccount } from "../../../../lib/store/index.ts";
import { countTry } from "../../../server/attempts.ts";
import { hashPassword } from "../../../server/password.ts";
import { ApiProblem } from "../../../server/problem.ts";
import { json } from "../../../server/reply.ts";
import { makeFirstAccount } from "../../../server/routes/accounts.ts";
import { serve } from "../../../server/serve.ts";
import { openSession, withCookies } from "../../../server/sessions.ts";
import { endSetUpCodes, isSetUpCode } from "../../../server/set-up-code.ts";

export const POST = serve(makeFirstAccount, async ({ server, here, address, body, now }) => {
  const { store } = server;
  if (await server.hasAccounts()) {
    throw new ApiProblem("owner-exists", "The workshop has accounts already. Ask its owner for one.");
  }
  if (!here) {
    await countTry(store, address);
    if (!(await isSetUpCode(store, body.setUpCode ?? "", now))) {
      throw new ApiProblem(
        "wrong-set-up-code",
        "Take the set-up code from the server's console. It is good for a day; starting the server again prints another.",
      );
    }
  }
  const { name, email, password } = body;
  const passwordHash = await hashPassword(password);
  await keepFirstAccount(store, { id: randomUUID(), name, email, role: "owner", passwordHash, now });
  await endSetUpCodes(store, now);
  const { headers, account } = await openSession(server, address, email, password);
  return withCookies(json({ id: account.id, name, role: account.role }, undefined, { status: 201 }), headers);
});
