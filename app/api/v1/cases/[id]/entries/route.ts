import { appendEntries, entriesAfter } from "../../../../../../lib/store/index.ts";
import { caseFor, caseIfThere } from "../../../../../server/case-access.ts";
import { isKnown, json, unchanged } from "../../../../../server/reply.ts";
import { addEntries, readEntries } from "../../../../../server/routes/cases.ts";
import { refuseForged } from "../../../../../server/seal.ts";
import { serve } from "../../../../../server/serve.ts";

const PAGE = 500;

export const GET = serve(readEntries, async (asked) => {
  const { server, params, query, request } = asked;
  const head = await caseFor(asked, "read-cases", params.id);
  const { after = 0, limit = PAGE } = query;
  if (isKnown(request, head.version)) return unchanged(head.version);
  const { version, entries } = await entriesAfter(server.store, params.id, after, limit);
  return json({ version, entries }, version);
});

export const POST = serve(addEntries, async ({ server, principal, params, body, now }) => {
  const head = await caseIfThere(server.store, principal, "add-entries", params.id);
  await refuseForged(server.store, params.id, body.entries, head === undefined);
  const accountId = principal.is === "account" ? principal.id : null;
  const { version, added, known } = await appendEntries(server.store, {
    caseId: params.id,
    entries: body.entries,
    accountId,
    ownerId: accountId,
    asNew: head === undefined,
    now,
  });
  if (added.length > 0) server.watch.grew(params.id, version);
  return json({ version, added, known }, version);
});
