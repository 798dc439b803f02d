import { apiDocument } from "../../../server/open-api.ts";
import { json } from "../../../server/reply.ts";
import { ROUTES } from "../../../server/routes/index.ts";
import { readApiDocument } from "../../../server/routes/status.ts";
import { serve } from "../../../server/serve.ts";
import { VERSION } from "../../../server/version.ts";

export const GET = serve(readApiDocument, () => json(apiDocument(ROUTES, VERSION)));
