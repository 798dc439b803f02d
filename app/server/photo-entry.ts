import type { EntryOf } from "../../lib/case/entries.ts";
import type { Picture } from "../../lib/store/index.ts";

/** The entry of a case that names a photo; it has the photo's own id. */
export function photoEntry(
  { width, height }: Picture,
  given: Pick<EntryOf<"photo">, "id" | "caseId" | "at" | "by"> & { readonly caption?: string | undefined },
): EntryOf<"photo"> {
  const { caption, ...head } = given;
  const worded = caption !== undefined && caption !== "";
  return { ...head, kind: "photo", photo: head.id, width, height, ...(worded && { caption }) };
}
