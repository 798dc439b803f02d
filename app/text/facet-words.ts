import type { Facet } from "../../lib/knowledge/pages/index.ts";

const WORDS: { readonly [F in Facet]: string } = {
  left: "when the fault is on the left",
  right: "when the fault is on the right",
  front: "when the fault is at the front",
  rear: "when the fault is at the rear",
  none: "when the fault has no side or end",
};

/** Where the fault sits for a sided feature to be meant. */
export function facetWords(facet: Facet): string {
  return WORDS[facet];
}
