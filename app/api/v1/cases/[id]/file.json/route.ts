import { exportCase } from "../../../../../../lib/case/export.ts";
import { caseFor } from "../../../../../server/case-access.ts";
import { everyEntry } from "../../../../../server/every-entry.ts";
import { download, etagOf } from "../../../../../server/reply.ts";
import { readCaseFile } from "../../../../../server/routes/cases.ts";
import { serve } from "../../../../../server/serve.ts";

export const GET = serve(readCaseFile, async (asked) => {
  const { id } = asked.params;
  await caseFor(asked, "read-cases", id);
  const { version, entries } = await everyEntry(asked.server.store, id);
  return download(exportCase(entries), `case-${id}.json`, "application/json", { etag: etagOf(version) });
});
