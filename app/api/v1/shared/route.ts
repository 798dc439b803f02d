import { everyEntry } from "../../../server/every-entry.ts";
import { json } from "../../../server/reply.ts";
import { readShared } from "../../../server/routes/cases.ts";
import { serve } from "../../../server/serve.ts";
import { READ_CASE, sharedCase } from "../../../server/shared-link.ts";

export const GET = serve(readShared, async ({ server, request, now }) => {
  const caseId = await sharedCase(server.store, request, now);
  return json({ kind: READ_CASE, ...(await everyEntry(server.store, caseId)) });
});
