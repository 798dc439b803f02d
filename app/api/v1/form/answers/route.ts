import { answer } from "../../../../server/form/say.ts";
import { serveForm } from "../../../../server/form/serve-form.ts";
import { answerForm } from "../../../../server/routes/form.ts";

export const POST = serveForm(answerForm, ({ server, body, now }, link) => answer(server, link, now, body));
