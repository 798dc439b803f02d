import { listCases as keptCases } from "../../../../lib/store/index.ts";
import { listedOwners } from "../../../server/case-access.ts";
import { headJson, json } from "../../../server/reply.ts";
import { listCases } from "../../../server/routes/cases.ts";
import { serve } from "../../../server/serve.ts";

const PAGE = 50;

export const GET = serve(listCases, async ({ server, principal, query }) => {
  const ownerIds = await listedOwners(server.store, principal);
  const { cases, next } = await keptCases(server.store, {
    limit: PAGE,
    ...query,
    ...(ownerIds !== undefined && { ownerIds }),
  });
  return json({ cases: cases.map(headJson), next });
});
