import { caseFor } from "../../../../../server/case-access.ts";
import { eventStream } from "../../../../../server/event-stream.ts";
import { identify } from "../../../../../server/identify.ts";
import { followCase } from "../../../../../server/routes/cases.ts";
import { serve } from "../../../../../server/serve.ts";

export const GET = serve(followCase, async (asked) => {
  const { server, params, request } = asked;
  const { version } = await caseFor(asked, "read-cases", params.id);
  return eventStream({
    watch: server.watch,
    caseId: params.id,
    version,
    signal: request.signal,
    // Whoever signed out or was shut out meanwhile hears no more.
    stillMay: async () => {
      const { principal } = await identify(server, request);
      await caseFor({ server, principal }, "read-cases", params.id);
    },
  });
});
