import { sendPhoto } from "../../../../server/form/send-photo.ts";
import { serveForm } from "../../../../server/form/serve-form.ts";
import { sendFormPhoto } from "../../../../server/routes/form.ts";

export const POST = serveForm(
  sendFormPhoto,
  ({ server, query, body, now }, link) => sendPhoto(server, link, now, { ...query, file: body }),
  { use: "photo" },
);
