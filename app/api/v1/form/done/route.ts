import { markLink } from "../../../../../lib/store/index.ts";
import { serveForm } from "../../../../server/form/serve-form.ts";
import { endForm } from "../../../../server/routes/form.ts";

export const POST = serveForm(
  endForm,
  ({ server, now }, link) => markLink(server.store, link.id, "done", now),
  {
    ends: true,
  },
);
