import { restoreArchive as restore, writeArchive } from "../../../../lib/store/index.ts";
import { piecesStream } from "../../../server/pieces-stream.ts";
import { download, json } from "../../../server/reply.ts";
import { readArchive, restoreArchive } from "../../../server/routes/archive.ts";
import { serve } from "../../../server/serve.ts";

export const GET = serve(readArchive, async ({ server, now }) => {
  const pieces = await piecesStream(writeArchive(server.store, now));
  return download(pieces, `cornerwise-${now.slice(0, 10)}.zip`, "application/zip");
});

export const POST = serve(restoreArchive, async ({ server, body }) =>
  json(await restore(server.store, body)),
);
