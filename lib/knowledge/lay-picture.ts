import type { Knowledge } from "./schema/compiled.ts";
import type { LayPicture } from "./schema/lay.ts";

/** The drawing that goes with a question; undefined where it has none, or this release holds none. */
export function layPicture(
  knowledge: Pick<Knowledge, "lay">,
  question: { readonly picture?: string | undefined },
): LayPicture | undefined {
  return knowledge.lay?.pictures.find((p) => p.id === question.picture);
}
