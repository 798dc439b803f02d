import { takeBack } from "../../../../../server/form/say.ts";
import { serveForm } from "../../../../../server/form/serve-form.ts";
import { takeBackSaid } from "../../../../../server/routes/form.ts";

export const DELETE = serveForm(takeBackSaid, ({ server, params, now }, link) =>
  takeBack(server, link, now, params.id),
);
