import { json } from "../../../server/reply.ts";
import { readHealth } from "../../../server/routes/status.ts";
import { serve } from "../../../server/serve.ts";
import { VERSION } from "../../../server/version.ts";
import { anyAccount } from "../../../../lib/store/index.ts";

export const GET = serve(readHealth, async ({ server }) => {
  await anyAccount(server.store); // throws when the database does not answer
  return json({ status: "ok", database: "ok", version: VERSION });
});
