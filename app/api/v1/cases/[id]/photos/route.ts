import { caseHead, keepPhoto } from "../../../../../../lib/store/index.ts";
import { caseFor } from "../../../../../server/case-access.ts";
import { photoEntry } from "../../../../../server/photo-entry.ts";
import { pictureOf } from "../../../../../server/picture.ts";
import { json } from "../../../../../server/reply.ts";
import { addPhoto } from "../../../../../server/routes/photos.ts";
import { serve } from "../../../../../server/serve.ts";

export const POST = serve(addPhoto, async (asked) => {
  const { server, principal, params, query, body, now } = asked;
  const caseId = params.id;
  await caseFor(asked, "add-entries", caseId);
  const picture = await pictureOf(body);
  const account = principal.is === "account" ? principal : undefined;
  const by = account?.name ?? query.by ?? "not signed";
  const kept = await keepPhoto(server.store, {
    caseId,
    id: query.id,
    picture,
    linkId: null,
    accountId: account?.id ?? null,
    ownerId: null,
    now,
    entry: photoEntry(picture, { id: query.id, caseId, at: now, by, caption: query.caption }),
  });
  if (kept !== undefined) server.watch.grew(caseId, kept.version);
  const version = kept?.version ?? (await caseHead(server.store, caseId))?.version ?? 0;
  return json({ photo: query.id, version }, undefined, { status: 201 });
});
