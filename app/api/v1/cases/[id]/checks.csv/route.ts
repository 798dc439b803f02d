import { checksCsv } from "../../../../../../lib/case/checks-csv.ts";
import { caseFor } from "../../../../../server/case-access.ts";
import { everyEntry } from "../../../../../server/every-entry.ts";
import { download, etagOf } from "../../../../../server/reply.ts";
import { readChecks } from "../../../../../server/routes/archive.ts";
import { serve } from "../../../../../server/serve.ts";

export const GET = serve(readChecks, async (asked) => {
  const { id } = asked.params;
  await caseFor(asked, "read-cases", id);
  const { version, entries } = await everyEntry(asked.server.store, id);
  return download(checksCsv(entries), `checks-${id}.csv`, "text/csv; charset=utf-8", {
    etag: etagOf(version),
  });
});
