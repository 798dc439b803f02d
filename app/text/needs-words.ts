import type { CarNeeds } from "../../lib/knowledge/pages/index.ts";

/** What a car must be like, in words: "front suspension: strut with one lower arm; driven wheels: front wheels". */
export function needsWords(needs: readonly CarNeeds[]): string {
  return needs
    .map((way) =>
      way
        .map(({ name, values }) => `${name.toLowerCase()}: ${values.map((v) => v.name).join(" or ")}`)
        .join("; "),
    )
    .join(" - or ");
}
