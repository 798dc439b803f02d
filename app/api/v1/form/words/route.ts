import { tell } from "../../../../server/form/say.ts";
import { serveForm } from "../../../../server/form/serve-form.ts";
import { tellForm } from "../../../../server/routes/form.ts";

export const POST = serveForm(tellForm, ({ server, body, now }, link) => tell(server, link, now, body));
