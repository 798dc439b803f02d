import { readPhoto as keptPhoto } from "../../../../../../../lib/store/index.ts";
import { caseFor } from "../../../../../../server/case-access.ts";
import { ApiProblem } from "../../../../../../server/problem.ts";
import { etagOf, isKnown } from "../../../../../../server/reply.ts";
import { readPhoto } from "../../../../../../server/routes/photos.ts";
import { serve } from "../../../../../../server/serve.ts";

export const GET = serve(readPhoto, async (asked) => {
  const { id, photoId } = asked.params;
  await caseFor(asked, "read-cases", id);
  const photo = await keptPhoto(asked.server.store, id, photoId);
  if (photo === undefined) {
    throw new ApiProblem(
      "no-such-photo",
      "The case has no photo of this id here; it may have been taken back.",
    );
  }
  // Kept by the browser, shown only after asking again whether it is still there and may be seen.
  const headers = { etag: etagOf(photoId), "cache-control": "private, no-cache" };
  if (isKnown(asked.request, photoId)) return new Response(null, { status: 304, headers });
  return new Response(Buffer.from(photo.bytes), {
    headers: { ...headers, "content-type": "image/jpeg", "content-disposition": "inline" },
  });
});
