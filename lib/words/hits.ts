import type { Hit } from "./phrases.ts";

/** The words found in a text, by the list or kind of record that they belong to. */
export interface Hits {
  of(tag: string): readonly Hit[];
}

/** Group hits by tag. */
export function groupHits(hits: readonly Hit[]): Hits {
  const byTag = new Map<string, Hit[]>();
  for (const hit of hits) {
    const list = byTag.get(hit.sense.tag);
    if (list === undefined) byTag.set(hit.sense.tag, [hit]);
    else list.push(hit);
  }
  return { of: (tag) => byTag.get(tag) ?? [] };
}

/** True when every word of `inner` lies within `outer`, which has at least as many words. */
export function coveredBy(inner: Hit, outer: Hit): boolean {
  return (
    inner.at.length <= outer.at.length &&
    inner.first >= outer.first &&
    inner.last <= outer.last &&
    inner.at.every((i) => outer.at.includes(i))
  );
}

/** True when the two share a word. */
export function shareWord(a: Hit, b: Hit): boolean {
  return a.first <= b.last && b.first <= a.last && a.at.some((i) => b.at.includes(i));
}

/** Look-up of hits by the tokens that they hold, so that long texts cost no more than their length. */
export function hitsByToken(hits: readonly Hit[]): (hit: Hit) => readonly Hit[] {
  const byToken = new Map<number, Hit[]>();
  for (const hit of hits) {
    for (const i of hit.at) {
      const list = byToken.get(i);
      if (list === undefined) byToken.set(i, [hit]);
      else list.push(hit);
    }
  }
  return (hit) => [...new Set(hit.at.flatMap((i) => byToken.get(i) ?? []))].filter((other) => other !== hit);
}
