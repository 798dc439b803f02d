import { keepPhoto, type Link } from "../../../lib/store/index.ts";
import { pictureOf } from "../picture.ts";
import type { Server } from "../server.ts";
import { byForm } from "./say.ts";

/**
 * Keeps a photo that the customer sends.
 *
 * Errors  ApiProblem bad-photo. StoreProblem as keepPhoto.
 */
export async function sendPhoto(
  server: Server,
  link: Link,
  now: string,
  given: { readonly id: string; readonly caption?: string | undefined; readonly file: Uint8Array },
): Promise<void> {
  const { id, caption, file } = given;
  const picture = await pictureOf(file);
  const { width, height } = picture;
  const worded = caption !== undefined && caption !== "" && { caption };
  const [entry] = await byForm(server, link, now, [
    { id, kind: "photo", photo: id, width, height, ...worded },
  ]);
  if (entry === undefined) return;
  const kept = await keepPhoto(server.store, {
    ...{ caseId: link.target, id, picture, linkId: link.id, accountId: null, ownerId: null, now, entry },
  });
  if (kept !== undefined) server.watch.grew(link.target, kept.version);
}
