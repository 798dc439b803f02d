import { type Holder, listCases as keptCases } from "../../../../lib/store/index.ts";
import { listedOwners } from "../../../server/case-access.ts";
import type { Principal } from "../../../server/principal.ts";
import { ApiProblem } from "../../../server/problem.ts";
import { headJson, json } from "../../../server/reply.ts";
import { listCases } from "../../../server/routes/cases.ts";
import { serve } from "../../../server/serve.ts";

const PAGE = 50;

export const GET = serve(listCases, async ({ server, principal, query }) => {
  const ownerIds = await listedOwners(server.store, principal);
  const { who, urgency, ...rest } = query;
  const { cases, next } = await keptCases(server.store, {
    limit: PAGE,
    ...rest,
    ...(urgency !== undefined && { levels: urgency }),
    ...(who !== undefined && { who: holderOf(who, principal) }),
    ...(ownerIds !== undefined && { ownerIds }),
  });
  return json({ cases: cases.map(headJson), next });
});

function holderOf(who: string, principal: Principal): Holder {
  if (who === "nobody") return who;
  if (who !== "me") {
    const at = who.indexOf(":");
    const value = who.slice(at + 1);
    return who.startsWith("account:") ? { account: value } : { name: value };
  }
  if (principal.is === "account") return { account: principal.id };
  throw new ApiProblem(
    "bad-input",
    "who: nobody is signed in here, so that there is no `me`. Give name:NAME.",
  );
}
