import { markLink } from "../../../../lib/store/index.ts";
import { serveForm } from "../../../server/form/serve-form.ts";
import { readForm } from "../../../server/routes/form.ts";

export const GET = serveForm(readForm, async ({ server, now }, link) => {
  if (link.openedAt === null) await markLink(server.store, link.id, "opened", now);
});
